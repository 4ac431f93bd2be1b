import './host.test.ts';
import './findings.test.ts';
import './hovers.test.ts';
import './fixes.test.ts';
import './format.test.ts';
import './names.test.ts';
import './writing.test.ts';
import './commands.test.ts';

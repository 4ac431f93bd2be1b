/** Where it is counted what tests reach: another thousand of random inputs reaches little that the first second did not. */
import * as fc from 'fast-check';

fc.configureGlobal({ plugins: [fc.interruptAfterTimeLimit(1000)] });

// Cuts Markdown on standard input at a line, so that it has at most so many bytes as the argument says, and calls nobody by name: a page that holds `@name` is no reason
// to send somebody a message.
import { readFileSync } from 'node:fs';

const most = Number(process.argv[2]);
const text = readFileSync(0, 'utf8').replace(/@(?=[\p{L}\p{N}])/gu, '@\u200b');
const CUT = '\n\nThere is more; it was cut here, where the code host takes no more.\n';
process.stdout.write(Buffer.byteLength(text) <= most ? text : cut());

function cut() {
  const bytes = Buffer.from(text).subarray(0, most - Buffer.byteLength(CUT));
  const end = bytes.lastIndexOf(10);
  return `${bytes.subarray(0, Math.max(end, 0)).toString('utf8')}${CUT}`;
}

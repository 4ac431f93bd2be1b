/** Every page in `examples/`, and every published layout, is readable line by line and stands as the formatter writes it. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { format } from '../../grammar/format.ts';
import { parse } from '../../grammar/parse.ts';

const FOLDERS = [
  { folder: '../../examples/', atLeast: 16 },
  { folder: '../fixtures/published/', atLeast: 10 },
];

for (const { folder, atLeast } of FOLDERS) {
  const home = new URL(folder, import.meta.url);
  const files = readdirSync(home).filter(f => f.endsWith('.plate')).sort();

  describe(folder.replaceAll('../', ''), () => {
    it(`holds at least ${atLeast} pages`, () => expect(files.length).toBeGreaterThanOrEqual(atLeast));

    it.each(files)('%s', file => {
      const text = readFileSync(new URL(file, home), 'utf8');
      const tree = parse(text);
      const unread = tree.lines.flatMap((line, at) => (line.issue ? [`line ${at + 1}: ${line.issue.code}: ${line.text.trim()}`] : []));
      expect(unread).toEqual([]);
      expect(tree.issues).toEqual([]);
      expect(tree.nodes.length).toBeGreaterThan(0);
      expect(format(text).text).toBe(text);
    });
  });
}

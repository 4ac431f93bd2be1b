/** Texts with stops, as an editor writes them before anything is typed over. */
export const withoutStops = (snippet: string): string => snippet
  .replace(/\$\{\d+\|((?:\\.|[^\\|])*)\|\}/g, (_, words: string) => /^(?:\\.|[^\\,])*/.exec(words)![0])
  .replace(/\$\{\d+:((?:\\.|[^\\}])*)\}/g, '$1').replace(/(?<!\\)\$\d+/g, '').replace(/\\([\\$},|])/g, '$1');

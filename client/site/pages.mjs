// Which of the project's own pages the site has, where they stand in it, and in which part of its list. A page that is missing here fails a test.
export const GROUPS = [
  { title: 'Begin', pages: [{ file: 'README.md', at: '' }, { file: 'grammar/manual.md', at: 'manual/' }, { file: 'examples/', at: 'examples/' }] },
  {
    title: 'Look up',
    pages: [
      { file: 'grammar/language.md', at: 'language/' }, { file: 'server/model/things/THINGS.md', at: 'things/' }, { file: 'server/checks/FINDINGS.md', at: 'findings/' }, { file: 'server/checks/MISTAKES.md', at: 'mistakes/' },
      { file: 'client/editors/README.md', at: 'editors/' }, { file: 'CHANGELOG.md', at: 'changes/' },
    ],
  },
  {
    title: 'Work on it',
    pages: [
      { file: 'DEVELOPERS.md', at: 'developers/' }, { file: 'server/adding.md', at: 'adding/' }, { file: 'server/core.md', at: 'core/' }, { file: 'server/optics/CHECKS.md', at: 'optics/' }, { file: 'server/lsp/METHODS.md', at: 'methods/' },
      { file: 'server/security.md', at: 'security/' }, { file: 'tests/mutation/README.md', at: 'mutation/' }, { file: 'tests/bench/FIGURES.md', at: 'figures/' },
    ],
  },
];

/** Where each example stands: a page of its own. */
export const exampleAt = name => `examples/${name.replace(/\.plate$/, '')}/`;

/** `whelk-too-long.plate` as the title of a page. */
export function exampleTitle(name) {
  const words = name.replace(/\.plate$/, '').replaceAll('-', ' ');
  return words[0].toUpperCase() + words.slice(1);
}

/** The way from a page of the site to another place in it. */
export function way(from, to) {
  const up = '../'.repeat(from.split('/').length - 1);
  return `${up}${to}` || './';
}

/** A folder that exists only in memory, and what a snapshot says, in short. */
import { analyse, type Library, type Snapshot } from '../../server/analysis.ts';
import type { Finding } from '../../server/checks/check.ts';
import { sample } from '../../server/results/sampling.ts';

const FOLDER = 'file:///saltmarsh/setups/';

/** Files by their names; a path that leaves the folder is outside, any other name is missing. */
export function folder(files: Readonly<Record<string, string>> = {}): Library {
  return {
    resolve: (path, from) => {
      const to = new URL(path, from).href;
      return to.startsWith(FOLDER) ? to : null;
    },
    text: uri => (Object.hasOwn(files, uri.slice(FOLDER.length)) ? files[uri.slice(FOLDER.length)] : undefined),
  };
}

export const look = (text: string, files?: Readonly<Record<string, string>>): Snapshot => analyse(`${FOLDER}setup.plate`, text, folder(files));

export const serious = (f: Finding): boolean => f.severity === 'error' || f.severity === 'warning';
/** `12 unknown-name` */
export const findings = (fs: readonly Finding[]): string[] => fs.map(f => `${f.at.line + 1} ${f.code}`);

/** All numbers that leave the core: of findings, cells, uncertainties and bands. */
export function numbersOf(s: Snapshot): { where: string; value: number }[] {
  const numbers = s.findings.flatMap(f => Object.entries(f.data).flatMap(([k, value]) => (typeof value === 'number' ? [{ where: `${f.code}.${k}`, value }] : [])));
  for (const { graph, published, goals } of s.results) {
    for (const c of graph.cells) if (!c.missing) numbers.push({ where: c.name, value: graph.value(c)! });
    for (const c of published) {
      if (c.missing) continue;
      numbers.push({ where: `u(${c.name})`, value: graph.uncertainty(c) });
      const band = sample(graph, c)!;
      for (const value of [band.low, band.high, band.mean, band.std]) numbers.push({ where: `band of ${c.name}`, value });
      for (const r of graph.ranking(c)) numbers.push({ where: `${c.name} by ${r.input.name}`, value: r.share }, { where: `${c.name} by ${r.input.name}`, value: r.slope });
    }
    for (const g of goals) for (const value of [g.value, g.give, ...g.limits]) if (value !== undefined) numbers.push({ where: g.goal.result, value });
  }
  return numbers;
}

/** A setup of string lengths without a fault. */
export const WHELK = `/// Last winter's whelk, from the notebook.
setup "Whelk shell" {
  hologram: transmission
  laser red {
    wavelength: 632.8 nm
    tube length: 350 mm
  }
  splitter S1
  mirror M1
  mirror M2
  mirror M3
  object whelk {
    depth: 35 mm
  }
  plate P1

  beam raw from red
    -> S1: 350 mm
  beam reference from S1 through
    -> M1: 750 mm ± 2 mm
    -> P1: 721 mm ± 2 mm
  beam object from S1 reflected
    -> M2: 410 mm ± 2 mm
    -> M3: 377 mm ± 2 mm
    -> whelk: 384 mm ± 3 mm
    -> P1: 300 mm ± 3 mm
}
`;

/** The page of a recording, as examples of the vocabulary name it. */
export const MASTER: Readonly<Record<string, string>> = { 'whelk-master.plate': 'setup "Whelk, master" {\n  plate P1\n}\n' };

/** The same with values of names and a trial that brings its own. */
export const TRIED = WHELK.replace(/\}\s*$/, `
  let deep = 200 mm
  mirror spare at (deep, 300) mm
  variant "tried" {
    let gap = 300 mm
    let wide = 2 * gap
    mirror M9 at (100, 200) mm
    beam other from S1 reflected
      -> M9: gap
    object.2: wide
    S1.reflects: 40% ± 2 points
    M1 at (gap, 300) mm
  }
}
`);

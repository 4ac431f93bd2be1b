/** Transfers that take their hologram from the page of its recording; figures by hand. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { LineCache } from '../../grammar/parse.ts';
import { analyse, type Library, type Snapshot } from '../../server/analysis.ts';
import { chainOf } from '../../server/features/chain.ts';
import { linksOf } from '../../server/features/links.ts';
import { findings, look, serious } from '../checks/library.ts';

interface Recorded { readonly laser?: string; readonly plate?: string; readonly gap?: string }
const MASTER = ({ laser = '632.8 nm', plate = 'reference distance: parallel', gap = '300 mm ± 3 mm' }: Recorded = {}): string => `setup "Winkles, master" {
  hologram: transmission
  laser red {
    wavelength: ${laser}
    coherence length: 5 m
  }
  splitter S1
  object winkles {
    size: 60 x 40 x 50 mm
  }
  plate P1 {
    size: 63 x 70 mm
    reference angle: 45°
    object angle: 0°
    emulsion: toward the object
    ${plate}
  }
  beam raw from red
    -> S1: 300 mm
  beam reference from S1 through
    -> P1: 1500 mm
  beam object from S1 reflected
    -> winkles: 1200 mm
    -> P1: ${gap}
}
`;
interface Given { readonly from?: string; readonly hologram?: string; readonly spreader?: string; readonly file?: string | undefined }
const transfer = ({ from = 'from: "winkles.plate"', hologram = '', spreader = '' }: Given): string => `setup "Winkles, transfer" {
  hologram: transmission
  laser red {
    wavelength: 632.8 nm
    coherence length: 5 m
    beam diameter: 0.8 mm
  }
  splitter S1
${spreader === '' ? '' : `  spreader R1 {\n    focal length: ${spreader}\n  }\n`}  hologram H1 {
    ${from}
    turned: flipped
    image: real
    ${hologram}
  }
  plate P2
  beam raw from red
    -> S1: 300 mm
  beam reference from S1 through
    -> P2: 1500 mm
  beam master from S1 reflected
${spreader === '' ? '    -> H1: 1200 mm\n' : '    -> R1: 200 mm\n    -> H1: 1000 mm\n'}  beam image from H1 diffracted
    -> P2: 300 mm
}
`;
const of = (g: Given = {}, m: Recorded = {}): Snapshot => look(transfer(g), { 'winkles.plate': g.file ?? MASTER(m) });
const value = (s: Snapshot, name: string): number => { const { graph } = s.results[0]!; return graph.value(graph.find(name)!)!; };
const found = (s: Snapshot): string[] => s.findings.filter(serious).map(f => `${f.code} ${f.subject}`);

describe('what the page of its recording tells', () => {
  it('is how large it is, and where its image is and how deep', () => {
    const s = of();
    const { graph, values, setup } = s.results[0]!;
    expect(found(s)).toEqual([]);
    expect([value(s, 'H1.image'), value(s, 'H1.depth'), value(s, 'P2.image offset')]).toEqual([0.3, 0.05, 0].map(v => expect.closeTo(v, 9) as number));
    // ± 3 mm, a half-width: 3/√3 = 1.7321 mm
    expect(graph.uncertainty(graph.find('H1.image')!) * 1e3).toBeCloseTo(1.7321, 4);
    const sides = (phrase: string): number[] => { const f = values.sizes(setup.things.get('H1')!, phrase)!.value; return f.kind === 'sizes' ? f.parts.map(p => p.value) : []; };
    expect([sides('size'), sides('image size').slice(0, 2)]).toEqual([[0.063, 0.07], [0.06, 0.04]]);
  });
  it('is said to come from there', () => {
    const { graph } = of().results[0]!;
    const [link] = chainOf(graph, graph.find('H1.image')!).links;
    expect([link!.words, link!.at!.uri.split('/').at(-1)]).toEqual(['image distance of H1, as “Winkles, master” of winkles.plate was recorded', 'winkles.plate']);
  });
  it('counts behind what the page of the transfer writes', () => {
    expect(value(of({ hologram: 'image distance: 280 mm' }), 'H1.image')).toBeCloseTo(0.28, 9);
  });
  it('may be a setup of the same page', () => {
    const s = look(`${transfer({ from: 'recorded as: "Winkles, master"' })}${MASTER()}`);
    expect([found(s), value(s, 'H1.image')]).toEqual([[], expect.closeTo(0.3, 9)]);
  });
  it('is watched, and can be opened', () => {
    const s = of();
    expect([s.files.map(f => f.split('/').at(-1)), linksOf(s).map(l => l.title)]).toEqual([['setup.plate', 'winkles.plate'], ['Open winkles.plate']]);
  });
  it('follows its page at once', () => {
    const library = (gap: string): Parameters<typeof analyse>[2] => ({ resolve: path => `file:///saltmarsh/${path}`, text: uri => (uri.endsWith('/winkles.plate') ? MASTER({ gap }) : undefined) });
    const at = (gap: string): number => value(analyse('file:///saltmarsh/setup.plate', transfer({}), library(gap)), 'H1.image');
    expect([at('300 mm'), at('250 mm')]).toEqual([0.3, 0.25].map(v => expect.closeTo(v, 9) as number));
  });
});

describe('while pages are edited', () => {
  const [page, other] = ['file:///saltmarsh/setup.plate', 'file:///saltmarsh/winkles.plate'];
  const library = (text: string, caches?: ReadonlyMap<string, LineCache>): Library => ({ resolve: path => `file:///saltmarsh/${path}`, text: uri => (uri === other ? text : undefined), ...(caches ? { lines: (uri: string) => caches.get(uri) } : {}) });
  it('the answers are those of pages that are read for the first time, and what is the same is kept', () => {
    const caches = new Map([[page, new LineCache()], [other, new LineCache()]]);
    const wide = MASTER({ gap: '250 mm' });
    const broken = MASTER().replace('setup "Winkles, master" {', 'setup "Winkles, master" {\n  plate P2');
    const planned = [[transfer({}), MASTER()], [transfer({}), MASTER()], [transfer({}), wide], [`// tide\n${transfer({})}`, wide], [transfer({ hologram: 'depth: 10 mm' }), wide], [transfer({}), broken], [transfer({}), '// gone\n'], [transfer({}), `// tide\n${MASTER()}`]].map(([text, master]) => {
      const kept = analyse(page, text!, library(master!, caches), caches.get(page));
      const anew = analyse(page, text!, library(master!));
      const all = (s: Snapshot): unknown => [s.findings.map(f => `${f.at.line} ${f.message}`), s.results[0]!.graph.planned.map(c => [c.name, s.results[0]!.graph.value(c), c.at?.line])];
      expect(all(kept)).toEqual(all(anew));
      return kept.work.planned;
    });
    // Only lines above have changed in the second and the fourth.
    expect(planned).toEqual([1, 0, 1, 0, 1, 1, 0, 1]);
  });
});

describe('a recording that cannot be found', () => {
  it.each([
    ['from: "limpets.plate"', undefined], ['from: "../winkles.plate"', undefined], ['from: "winkles.plate"', '// nothing yet\n'], ['from: "winkles.plate"', `${MASTER()}${MASTER().replace('master', 'copy')}`],
    ['from: "winkles.plate"\n    recorded as: "Winkles"', undefined], ['from: "winkles.plate"\n    recorded on: P7', undefined], ['recorded as: "Winkles, master"', undefined], ['from: "winkles.plate"', 'setup "Empty" {\n}\n'],
  ])('%s', (from, file) => { expect(found(of({ from, file }))).toEqual(['master-missing H1']); });
  it('is not looked for between quotes in which nothing stands yet', () => { expect(found(of({ from: 'from: ""', file: undefined }))).toEqual([]); });
  it('is told once, however many holograms name it', () => {
    const text = transfer({ from: 'from: "limpets.plate"' });
    expect(findings(look(`${text}${text.replace('transfer', 'second')}`).findings.filter(serious)).filter(f => f.includes('master'))).toHaveLength(1);
  });
  it('in a ring of files is one error', () => {
    const other = transfer({ from: 'from: "setup.plate"' }).replace('transfer', 'copy');
    const s = look(transfer({}), { 'winkles.plate': other, 'setup.plate': transfer({}) });
    expect(s.findings.filter(serious).map(f => f.message)).toEqual([expect.stringContaining('“setup.plate → winkles.plate → setup.plate”') as string]);
  });
  it('in a ring of setups is one error, and a setup is no master of itself', () => {
    const [a, b] = [transfer({ from: 'recorded as: "Winkles, copy"' }), transfer({ from: 'recorded as: "Winkles, transfer"' }).replace('"Winkles, transfer" {', '"Winkles, copy" {')];
    expect([found(look(`${a}${b}`)), found(look(transfer({ from: 'recorded as: "Winkles, transfer"' })))]).toEqual([['master-ring H1'], ['master-ring H1']]);
  });
  it('in a chain of a hundred is an error, and nothing throws', () => {
    const pages = Array.from({ length: 100 }, (_, i) => transfer({ from: `recorded as: "W${i + 1}"` }).replace('"Winkles, transfer" {', `"W${i}" {`));
    expect(found(look(`${pages.join('')}${MASTER().replace('Winkles, master', 'W100')}`)).filter(f => f.startsWith('master'))).toContain('master-missing H1');
  });
});

describe('a master that is lit by other light', () => {
  const off = (s: Snapshot): Readonly<Record<string, unknown>> => s.findings.find(f => f.code.startsWith('master-'))!.data;
  it('in another colour: 1/R = −(0.840708 · 1/0.3): 356.842 mm, as wide, 1.18947 times as deep, turned by 6.4673°', () => {
    // Recorded in 632.8 nm, lit in 532 nm, parallel light both times: cases of Meier’s formula and of the grating equation that another program has worked out
    const s = look(transfer({}).replace('632.8', '532'), { 'winkles.plate': MASTER() });
    expect(found(s)).toEqual(['master-light-off H1.colour']);
    expect(off(s)).toMatchObject({ place: expect.closeTo(0.3568, 4) as number, size: 1, depth: expect.closeTo(1.189, 3) as number, turned: expect.closeTo((6.4673 * Math.PI) / 180, 4) as number });
  });
  it('flipped in a beam that spreads, with its recording known', () => {
    // −10 mm, 1000 mm behind it: spreads from 1010 mm; the reference was parallel: 1/(1 − 0.3/1.01) = 1.42254; · 300 mm = 426.76 mm
    const s = of({ spreader: '-10 mm' });
    expect([off(s)['size'], off(s)['place'], off(s)['atLeast']]).toEqual([expect.closeTo(1.42254, 2), expect.closeTo(0.42676, 3), undefined]);
  });
  it('whose reference spread, still more', () => {
    // 1/(1 − 0.3 (1/1.01 + 1/1)) = 2.4788
    const s = of({ spreader: '-10 mm' }, { plate: 'reference distance: 1000 mm' });
    expect([off(s)['size'], off(s)['together']]).toEqual([expect.closeTo(2.4788, 2), 1]);
  });
  it('with its layer on the other side', () => {
    expect([found(of({ hologram: 'emulsion: away from the image' })), found(of({ hologram: 'emulsion: toward the image' }))]).toEqual([['master-turned H1.layer'], []]);
  });
});

describe('the winkles', () => {
  const example = (name: string): string => readFileSync(`examples/${name}.plate`, 'utf8');
  const files = { 'collimated-reference.plate': example('collimated-reference'), 'saltmarsh-lab.plate': example('saltmarsh-lab') };
  it.each([['up: up', ['master-turned H1.edge']], ['up: down', []]])('lit from the other side of the bench, go in upside down: %s', (up, expected) => {
    // The master faced (194, 157), the transfer faces (−157, 194): a quarter turn about the upright, and the light comes on along −x both times. Run backwards, it would have come to the other edge.
    const text = example('image-plane-transfer').replace('up: down', up);
    expect(look(text, files).findings.filter(serious).map(f => `${f.code} ${f.subject}`)).toEqual(expected);
  });
});

describe('what a transfer shows under its lamp', () => {
  const hung = (hologram: string, hang = ''): Snapshot => look(
    transfer({ hologram }).replace('    beam diameter: 0.8 mm\n', '').replace('  plate P2\n', `  plate P2 {\n    reference angle: 45°\n    object angle: 0°\n    reference distance: parallel\n  }\n  lamp spot {\n    distance: 2 m\n    angle: 45°\n    beam: parallel\n    laser: red\n    ${hang}\n  }\n`),
    { 'winkles.plate': MASTER() },
  );
  it('flipped, stands before it, right side out, with the opening of the master in front', () => {
    // Image of H1 at 280 of 300 mm: 20 mm before P2, and flipped in parallel light 20 mm before it again, as wide. H1 is 300 mm before P2, 63 x 70 mm.
    const s = hung('image distance: 280 mm');
    expect(['place', 'size', 'opening.place', 'opening.width', 'opening.height'].map(what => value(s, `P2.replay.${what}`))).toEqual([-0.02, 1, -0.3, 0.063, 0.07].map(v => expect.closeTo(v, 9) as number));
    expect(s.results[0]!.replay.all[0]!.hung).toMatchObject({ order: -1, depth: 'orthoscopic', written: false });
  });
  it('as it was recorded, is inside out', () => {
    expect(hung('', 'hung: as recorded').results[0]!.replay.all[0]!.hung.depth).toBe('pseudoscopic');
  });
  it('after a third step, as recorded, is right side out: the real image of an image that was inside out is not', () => {
    const third = transfer({ from: 'recorded as: "Winkles, second"' }).replace('  plate P2\n', '  plate P3 {\n    reference angle: 45°\n    object angle: 0°\n  }\n  lamp spot {\n    distance: 2 m\n    angle: 45°\n    laser: red\n    hung: as recorded\n  }\n').replaceAll('-> P2', '-> P3');
    const second = transfer({}).replace('"Winkles, transfer" {', '"Winkles, second" {').replace('  plate P2\n', '  plate P2 {\n    reference angle: 45°\n    object angle: 0°\n  }\n');
    expect(look(`${third}${second}`, { 'winkles.plate': MASTER() }).results[0]!.replay.all[0]!.hung.depth).toBe('orthoscopic');
  });
  it.each([['as recorded', 'the right'], ['flipped', 'the right']])('by places, its light comes from the side of its reference: %s', (how, side) => {
    // The plate faces (0.777, 0.629), the reference runs along (−0.994, 0.104). Who looks along (0.777, 0.629) has (0.629, −0.777) on the right, from where it came: 0.707. Flipped, one looks the other way, and the light runs backwards: the same.
    const text = readFileSync('examples/collimated-reference.plate', 'utf8').replace('  beam raw', `  lamp spot {\n    distance: 2 m\n    angle: 45°\n    laser: red\n    hung: ${how}\n  }\n\n  beam raw`);
    expect(look(text, { 'saltmarsh-lab.plate': readFileSync('examples/saltmarsh-lab.plate', 'utf8') }).results[0]!.replay.all[0]!.hung.from).toBe(side);
  });
});

describe('a master that is lit at another angle than its reference came', () => {
  // H1 in the origin faces P2 along +x; its light comes from below, at an angle whose tangent is y/600.
  const lit = (degrees: number, then = '45°'): Snapshot => {
    const y = (-600 * Math.tan((degrees * Math.PI) / 180)).toFixed(4);
    return look(`setup "Winkles, transfer" {
  hologram: transmission
  laser red at (-1000, ${y}) mm {
    wavelength: 632.8 nm
    coherence length: 5 m
  }
  splitter S1 at (-600, ${y}) mm
  mirror M1 at (-100, ${y}) mm
  hologram H1 at (0, 0) mm facing P2 {
    from: "winkles.plate"
    turned: flipped
    image: real
  }
  plate P2 at (300, 0) mm facing H1
  beam stop BS1 at (200, ${(200 * Math.tan((degrees * Math.PI) / 180)).toFixed(4)}) mm
  beam raw from red
    -> S1
  beam reference from S1 through
    -> M1
    -> P2
  beam master from S1 reflected
    -> H1
  beam image from H1 diffracted
    -> P2
  beam rest from H1 through
    -> BS1
}
`, { 'winkles.plate': MASTER().replace('reference angle: 45°', `reference angle: ${then}`) });
  };
  const off = (s: Snapshot): (typeof s.findings)[number] | undefined => s.findings.find(f => f.code === 'master-light-off');
  it('is told by how much to turn it, and how far its image is turned aside', () => {
    const f = off(lit(51))!;
    // Flipped, m = −1, the object squarely before it: sin θ_I = sin 51° − sin 45° = 0.777146 − 0.707107 = 0.070039: 4.016°.
    expect([f.severity, f.subject, f.data['what']]).toEqual(['note', 'H1.angle', 'angle']);
    expect([f.data['now'], f.data['recorded'], f.data['off'], f.data['turned']].map(v => (Number(v) * 180) / Math.PI)).toEqual([51, 45, 6, 4.016].map(v => expect.closeTo(v, 1) as number));
  });
  it('is grave from 10° on', () => expect([off(lit(56))?.severity, off(lit(34))?.severity]).toEqual(['warning', 'warning']));
  it('and nothing within what a hand sets, or at the angle of the recording', () => expect([off(lit(45)), off(lit(47)), off(lit(30, '30°'))]).toEqual([undefined, undefined, undefined]));
});
it('the achromatic angle of a rainbow hologram: arctan(sin 45°) = 35.264°, arctan(sin 60°) = 40.893°, and no other has one', () => {
  const angle = (reference: string, hologram = 'rainbow'): number | undefined => {
    const r = look(transfer({}).replace('hologram: transmission', `hologram: ${hologram}`).replace('  plate P2\n', `  plate P2 {\n    reference angle: ${reference}\n    object angle: 0°\n  }\n`), { 'winkles.plate': MASTER() }).results[0]!;
    const a = r.graph.value(r.ask('achromatic angle')!);
    return a === undefined ? undefined : (a * 180) / Math.PI;
  };
  expect([angle('45°'), angle('60°'), angle('45°', 'transmission')]).toEqual([expect.closeTo(35.264, 3), expect.closeTo(40.893, 3), undefined]);
});

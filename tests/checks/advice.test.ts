/** What findings advise fits what stands on the table. */
import { expect, test } from 'vitest';
import { analyse } from '../../server/analysis.ts';

const words = (text: string, code: string): string[] => analyse('file:///saltmarsh/a.plate', text).findings.filter(f => f.code === code).map(f => f.message);

const LASER = `  laser red {
    wavelength: 632.8 nm
    tube length: 350 mm
    power: 12 mW
    beam diameter: 0.8 mm
  }
`;

test('of one beam only the object can be brought nearer: there is no path to lengthen', () => {
  const [one] = words(`setup "Oyster" {
  hologram: reflection
${LASER}  object oyster {
    depth: 20 mm
  }
  plate P1
  beam all from red
    -> P1 through: 900 mm
    -> oyster: 60 mm
    -> P1: 60 mm
}
`, 'arms-mismatched');
  // 60 mm on, 60 mm back
  expect(one).toContain('120 mm longer');
  expect(one).toContain('There is one beam, and no path to lengthen: bring oyster nearer to P1; each millimetre counts about twice.');
  expect(one).not.toMatch(/engthen “|horten “/);
});

// Reference 900, key 600 + 300 = 900: they match. Fill 300 + 400 + 300 + 300 = 1300 mm, parted from the key at S2.
const keyAndFill = (key: number): string => `setup "Whelk" {
  hologram: transmission
${LASER}  splitter S1
  splitter S2
  object whelk {
    depth: 10 mm
  }
  plate P1
  mirror M1
  beam raw from red
    -> S1: 350 mm
  beam reference from S1 through
    -> P1: 900 mm
  beam feed from S1 reflected
    -> S2: 300 mm
  beam key from S2 through
    -> whelk: ${key} mm
    -> P1: 300 mm
  beam fill from S2 reflected
    -> M1: 400 mm
    -> whelk: 300 mm
    -> P1: 300 mm
}
`;

test('beside an arm that matches, only what the other has for itself is to be changed', () => {
  const all = words(keyAndFill(300), 'arms-mismatched');
  expect(all).toHaveLength(1);
  expect(all[0]).toContain('Shorten “fill” by 400 mm behind S2; leave “reference” as it is, which “key” matches.');
});

test('where no arm matches, the reference may be changed as well', () => {
  const all = words(keyAndFill(800), 'arms-mismatched');
  expect(all).toHaveLength(2);
  expect(all[0]).toContain('Shorten “key” or lengthen “reference” by 500 mm.');
});

// w = 0.4 mm · F/9 mm behind the spreading lens: a collimator of 180 mm makes it 8 mm, far too narrow for a plate of 102 x 127 mm.
const corners = (between: string, legs: string): string[] => words(`setup "Jug" {
  hologram: transmission
${LASER}  splitter S
  spreader R1 {
    focal length: 9 mm
  }
${between}  plate P1 {
    size: 102 x 127 mm
    reference angle: 45°
  }
  object jug {
    size: 50 x 50 x 40 mm
  }
  beam raw from red
    -> S: 300 mm
  beam reference from S through
    -> R1: 200 mm
${legs}  beam object from S reflected
    -> jug: 800 mm
    -> P1: 300 mm
}
`, 'corners-dark');

test('what spreads a beam more depends on what shapes it last', () => {
  const lens = corners('', '    -> P1: 400 mm\n');
  expect(lens).toHaveLength(1);
  expect(lens[0]).toContain('a lens of shorter focal length, or a longer way from it.');
  for (const thing of ['collimator CM', 'mirror CM']) {
    const behind = corners(`  ${thing} {\n    focal length: 180 mm\n  }\n`, '    -> CM: 189 mm\n    -> P1: 400 mm\n');
    expect(behind, thing).toHaveLength(1);
    expect(behind[0]).toContain('a spreading lens of shorter focal length before CM, or in the place of CM one of longer focal length, that much farther from the spreading lens. A longer way behind CM hardly helps.');
  }
});

// A reference that comes to P1 along (−150, 0, z), with P1 facing up the table: level, or from 400 mm higher or lower.
const overhead = (z: number, plate: string): string[] => words(`setup "Whelk" {
  hologram: transmission
  beam height: 500 mm
${LASER}  splitter S1 at (300, 0, 500) mm
  mirror M1 at (750, 250, ${z}) mm
  mirror M2 at (300, 400, 500) mm
  object whelk at (600, 400, 500) mm
  plate P1 at (600, 100, 500) mm facing whelk {
    ${plate}
  }
  beam raw from red
    -> S1: 300 mm
  beam reference from S1 through
    -> M1
    -> P1
  beam object from S1 reflected
    -> M2
    -> whelk
    -> P1
}
`, 'reference-from-disagrees');

test('where the reference comes from is held against the places', () => {
  expect(overhead(900, 'reference from: above')).toEqual([]);
  expect(overhead(100, 'reference from: below')).toEqual([]);
  expect(overhead(500, 'reference from: the side')).toEqual([]);
  expect(overhead(900, 'reference from: below')).toEqual(['“reference from: below” is written of P1, and by the places “reference” comes from above. The places are used; delete it, or correct the places.']);
  expect(overhead(500, 'reference from: above')[0]).toContain('comes from the side');
  expect(overhead(900, 'index: 1.6')).toEqual([]);
});

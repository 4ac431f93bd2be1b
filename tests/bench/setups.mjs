// One setup of a chosen length, written as a .plate file, as JSON and as YAML: the same things and facts in each.

/** Where the measured edit happens: the leg to the object. With 684 mm the arms no longer match, and the schema's limit is passed. */
const MATCHED = '384';
const TOO_LONG = '684';

/** Nothing on this table is farther than this from the next thing. */
const LONGEST_LEG = 500;

export const SCHEMA = {
  $schema: 'http://json-schema.org/draft-07/schema#',
  type: 'object',
  required: ['setup', 'hologram', 'things', 'beams'],
  additionalProperties: false,
  properties: {
    setup: { type: 'string' },
    hologram: { enum: ['transmission', 'reflection'] },
    things: { type: 'object', additionalProperties: { $ref: '#/definitions/thing' } },
    beams: { type: 'object', additionalProperties: { $ref: '#/definitions/beam' } },
  },
  definitions: {
    thing: {
      type: 'object',
      required: ['kind'],
      additionalProperties: false,
      properties: {
        kind: { enum: ['laser', 'splitter', 'mirror', 'object', 'plate'] },
        wavelength: { type: 'number', exclusiveMinimum: 0 },
        tubeLength: { type: 'number', exclusiveMinimum: 0 },
        depth: { type: 'number', minimum: 0 },
        loss: { type: 'number', minimum: 0, maximum: 100 },
        coating: { enum: ['aluminium', 'silver', 'dielectric'] },
      },
    },
    beam: {
      type: 'object',
      required: ['from', 'legs'],
      additionalProperties: false,
      properties: { from: { type: 'string' }, legs: { type: 'array', minItems: 1, items: { $ref: '#/definitions/leg' } } },
    },
    leg: {
      type: 'object',
      required: ['to', 'length'],
      additionalProperties: false,
      properties: {
        to: { type: 'string' },
        length: { type: 'number', exclusiveMinimum: 0, maximum: LONGEST_LEG },
        within: { type: 'number', minimum: 0 },
      },
    },
  },
};

/** The text in one format, with the place of the digit that an edit changes, and the two digits. It starts with arms that do not match. */
export function setup(lines, format) {
  const text = { plate, json, yaml }[format](describe(lines));
  const before = text.slice(0, text.lastIndexOf(TOO_LONG)).split('\n');
  return {
    text,
    lines: text.split('\n').length - 1,
    edit: { line: before.length - 1, character: before.at(-1).length, matched: MATCHED[0], tooLong: TOO_LONG[0] },
  };
}

/** As many mirrors as make the .plate text `lines` long: four lines each for what it is, one for the leg to it. */
function describe(lines) {
  const mirrors = Math.floor((lines - 20) / 5);
  const arm = (letter) => Array.from({ length: Math.floor(mirrors / 2) }, (_, n) => `${letter}${n + 1}`);
  const [reference, object] = [arm('R'), arm('T')];
  const length = (n) => 290 + ((n * 37) % 60);
  const leg = (to, n) => ({ to, length: length(n), within: 0.2 });
  return {
    setup: `A table with ${reference.length + object.length} mirrors`,
    hologram: 'transmission',
    things: {
      red: { kind: 'laser', wavelength: 632.8, tubeLength: 350 },
      S1: { kind: 'splitter' },
      whelk: { kind: 'object', depth: 35 },
      P1: { kind: 'plate' },
      ...Object.fromEntries([...reference, ...object].map((name, n) => [name, { kind: 'mirror', loss: 4 + (n % 3), coating: 'aluminium' }])),
    },
    beams: {
      raw: { from: 'red', legs: [leg('S1', 1)] },
      reference: { from: 'S1 through', legs: [...reference.map(leg), { to: 'P1', length: 484, within: 0.2 }] },
      object: { from: 'S1 reflected', legs: [...object.map(leg), { to: 'whelk', length: 684, within: 0.2 }, { to: 'P1', length: 100, within: 0.2 }] },
    },
  };
}

function plate({ setup, hologram, things, beams }) {
  const units = { wavelength: ' nm', tubeLength: ' mm', depth: ' mm', loss: '%', coating: '' };
  const words = { tubeLength: 'tube length' };
  const thing = ([name, { kind, ...facts }]) => {
    const block = Object.entries(facts).map(([fact, value]) => `    ${words[fact] ?? fact}: ${value}${units[fact]}\n`).join('');
    return `  ${kind} ${name}${block && ` {\n${block}  }`}\n`;
  };
  const leg = ({ to, length, within }) => `    -> ${to}: ${length} mm ± ${within} mm\n`;
  const beam = ([name, { from, legs }]) => `  beam ${name} from ${from}\n${legs.map(leg).join('')}`;
  return `setup "${setup}" {\n  hologram: ${hologram}\n${Object.entries(things).map(thing).join('')}\n${Object.entries(beams).map(beam).join('')}}\n`;
}

function json({ things, beams, ...head }) {
  const leg = (leg) => `        ${oneLine(leg)}`;
  const beam = ([name, { from, legs }]) => `    "${name}": {\n      "from": "${from}",\n      "legs": [\n${legs.map(leg).join(',\n')}\n      ]\n    }`;
  const thing = ([name, facts]) => `    "${name}": {\n${Object.entries(facts).map(([fact, value]) => `      "${fact}": ${JSON.stringify(value)}`).join(',\n')}\n    }`;
  const block = (name, entries) => `  "${name}": {\n${entries.join(',\n')}\n  }`;
  const facts = Object.entries(head).map(([fact, value]) => `  "${fact}": ${JSON.stringify(value)}`);
  return `{\n${[...facts, block('things', Object.entries(things).map(thing)), block('beams', Object.entries(beams).map(beam))].join(',\n')}\n}\n`;
}

function yaml({ things, beams, ...head }) {
  const leg = (leg) => `      - ${oneLine(leg).replaceAll('"', '')}\n`;
  const beam = ([name, { from, legs }]) => `  ${name}:\n    from: ${from}\n    legs:\n${legs.map(leg).join('')}`;
  const thing = ([name, facts]) => `  ${name}:\n${Object.entries(facts).map(([fact, value]) => `    ${fact}: ${value}\n`).join('')}`;
  const facts = Object.entries(head).map(([fact, value]) => `${fact}: ${value}\n`).join('');
  return `${facts}things:\n${Object.entries(things).map(thing).join('')}beams:\n${Object.entries(beams).map(beam).join('')}`;
}

function oneLine({ to, length, within }) {
  return `{ "to": "${to}", "length": ${length}, "within": ${within} }`;
}

/** The laser reaches less far than the arms differ, or farther: the digit that an edit of the inventory changes. */
const FAR = '900';
const NEAR = '200';

/** An inventory with one laser that counts, and `items` others. */
export function inventory(items) {
  const others = Array.from({ length: items }, (_, n) => `  mirror flat-${n} {\n    loss: ${4 + (n % 3)}%\n  }\n`).join('');
  const text = `inventory lab {\n${others}  laser red-12 {\n    wavelength: 632.8 nm\n    coherence length: ${NEAR} mm\n  }\n}\n`;
  const before = text.slice(0, text.lastIndexOf(NEAR)).split('\n');
  return { text, edit: { line: before.length - 1, character: before.at(-1).length, matched: FAR[0], tooLong: NEAR[0] } };
}

/** A page of setups of which each has an object arm that is too long; they draw on the inventory, or have a laser of their own. The place of an edit that leaves one of them too long. */
export function mismatched(setups, usesInventory) {
  const one = (n) => `setup "Whelk ${n}" {
  laser red${usesInventory ? ' = lab.red-12' : ' {\n    wavelength: 632.8 nm\n    coherence length: 200 mm\n  }'}
  splitter S1
  mirror M1
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
    -> whelk: ${1240 + (n % 7)} mm ± 3 mm
    -> P1: 300 mm ± 3 mm
}
`;
  const text = `${usesInventory ? 'use "lab.plate"\n' : ''}${Array.from({ length: setups }, (_, n) => one(n)).join('\n')}`;
  const middle = text.indexOf('750 mm', text.indexOf(`"Whelk ${Math.floor(setups / 2)}"`));
  const before = text.slice(0, middle + 2).split('\n');
  return { text, edit: { line: before.length - 1, character: before.at(-1).length, matched: '0', tooLong: '2' } };
}

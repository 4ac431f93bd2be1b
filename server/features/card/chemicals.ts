/**
 * Cautions for chemicals that a page names. They warn and refer; none of them is a recipe, and none says that something can do no harm.
 *
 * Source: hazards as data sheets of suppliers list them and as chemistry books for photography tell, from memory; "acid into water" is published in common safety rules.
 */
const CAUTIONS: readonly (readonly [RegExp, string])[] = [
  [/dichromate|chromic|\bdcg\b/i, 'Dichromate causes cancer, harms heredity and fertility, and sensitises: no skin, no dust, never to the drain. Where another bleach serves, take that.'],
  [/pyro/i, 'Pyrogallol is a poison by mouth, skin and breath, and stains: gloves, and no dust when it is weighed.'],
  [/catechol|hydroquinone|metol|phenidone|amidol/i, 'Developing agents sensitise the skin: gloves, also for the wet plate, and no dust.'],
  [/hydroxide|\blye\b|caustic|carbonate|washing soda/i, 'Alkalis burn skin and eyes: glasses and gloves, and the powder into the water, slowly, never the other way.'],
  [/permanganate|persulphate|persulfate|peroxide|perborate/i, 'What oxidises can set other things alight and bleaches skin: gloves, and away from acids and from what burns.'],
  [/formal(?:in|dehyde)|glutaraldehyde|glyoxal/i, 'Hardeners of this kind give off poisonous vapour and sensitise; formaldehyde causes cancer: only under a hood, gloves.'],
  [/copper sul|cupric|\bcuso/i, 'Copper salts irritate the eyes and poison waters: glasses, and never to the drain.'],
  [/sulphuric|sulfuric|bisulphate|bisulfate|(?<!ascorbic )\bacid\b/i, 'Acids burn: glasses. Acid into water, never water into acid.'],
  [/benzoquinone|\bpbq\b/i, 'Benzoquinone gives off a poisonous vapour that draws tears: only under a hood.'],
  [/mercur|bromine/i, 'Mercury salts and bromine vapour are bleaches of old times, highly poisonous and restricted: do not use them.'],
  [/ammonia|methanol|ethanol|propanol|isopropyl|acetone|spirit|alcohol/i, 'Vapours: air the room, and no flame or spark near by.'],
  [/ferricyanide/i, 'Keep ferricyanide away from acids and from heat.'],
  [/[Tt]riethanolamine|\bTEA\b|\btea bath\b/, 'Triethanolamine irritates skin and eyes.'],
  [/silver|fixer|\bfix\b|\bhypo\b|thiosul/i, 'What has dissolved silver is collected, and does not go to the drain.'],
];

export const cautionsFor = (text: string): string[] => CAUTIONS.filter(([named]) => named.test(text)).map(([, words]) => words);

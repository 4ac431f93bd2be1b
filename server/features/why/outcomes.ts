/** What may be seen on a plate, in the words of the trade, and which of it somebody's words mean. */
import { distance } from '../../model/scope.ts';

/** Each outcome with the words that mean it: all words of one line, in any order. */
export const OUTCOMES = {
  'nothing at all': ['nothing at all', 'nothing', 'no image', 'no hologram', 'blank', 'clean plate', 'empty plate'],
  'dull everywhere': ['dull', 'dull everywhere', 'dim', 'weak', 'faint', 'dark everywhere', 'not bright', 'flat'],
  'dark at the back': ['dark back', 'dull back', 'black back', 'dark behind', 'back missing', 'dark depth', 'dark far part', 'dull far part'],
  'dark at the front': ['dark front', 'dull front', 'front missing', 'dark near part'],
  'bright in the middle and black beyond': ['middle black beyond', 'bright middle black', 'black beyond', 'middle only'],
  'one side dead': ['one side dead', 'side dead', 'one side dark', 'side dark', 'one side missing', 'half dark', 'half missing', 'side black'],
  'dark corners': ['dark corners', 'dull corners', 'corners missing', 'dark edges', 'corners black', 'fades corners', 'fades edges'],
  'dark bars': ['dark bars', 'dark bands', 'black bars', 'black bands', 'bars', 'bands', 'zebra'],
  'bands over the depth': ['bands depth', 'bars depth', 'zebra depth'],
  'wood grain': ['wood grain', 'woodgrain', 'grain stripes', 'tree rings', 'contour lines', 'grain'],
  'rings': ['rings', 'spots', 'bull eyes', 'circles'],
  'noisy halo': ['halo', 'noisy halo', 'haze', 'hazy', 'noise', 'noisy', 'glow', 'veil around'],
  'double image': ['double image', 'double', 'second image', 'ghost', 'flare', 'twice image'],
  'too dense': ['dense', 'too dense', 'nearly black', 'too black', 'overexposed', 'over exposed'],
  'too thin': ['thin', 'too thin', 'pale', 'underexposed', 'under exposed', 'hardly any density'],
  'fogged': ['fogged', 'fog', 'grey veil', 'gray veil', 'fogging'],
  'black shadows, harsh highlights': ['shadows', 'black shadows', 'harsh', 'highlights', 'glare'],
  'black bands on the object only': ['bands object only', 'bars object only', 'object black', 'object missing', 'band object', 'band across object'],
  'wrong colour': ['wrong colour', 'wrong color', 'colour', 'color', 'green not red', 'colour changes', 'color changes', 'hue'],
  'colours apart': ['colours apart', 'colors apart', 'colour behind another', 'color behind another', 'colours register', 'colors register', 'colour fringes', 'color fringes'],
  'blurred': ['blurred', 'blur', 'unsharp', 'fuzzy', 'soft', 'blurry'],
  'stretched': ['stretched', 'squashed', 'distorted', 'too big', 'too large', 'too small', 'wrong place', 'swims', 'moves'],
  'inside out': ['inside out', 'pseudoscopic', 'depth reversed', 'turned inside'],
  'flips sideways': ['flips', 'flips sideways', 'no depth', 'jumps sideways'],
  'blank strip': ['blank strip', 'strip missing', 'gap'],
  'upside down or behind glass': ['upside down', 'wrong side', 'displaced', 'scratched', 'mirror image'],
  'stained': ['stain', 'stained', 'brown', 'milky', 'reticulation', 'spots chemical', 'streaks'],
  'gone since yesterday': ['worked yesterday', 'gone since yesterday', 'suddenly dead', 'dead today', 'sometimes', 'comes and goes', 'daytime', 'only night'],
  'light where it should not be': ['spot wall', 'stray', 'flash', 'bright spot', 'light elsewhere'],
  'a beam is cut': ['beam cut', 'half beam', 'cut beam', 'shadow beam', 'no room'],
  'hands hurt': ['burn', 'burns', 'stained hands', 'fumes', 'hands hurt', 'skin'],
} as const satisfies Readonly<Record<string, readonly string[]>>;

export type Outcome = keyof typeof OUTCOMES;
export const OUTCOME_NAMES = Object.keys(OUTCOMES) as Outcome[];

/** Words of plates that nothing was wrong with. */
const GOOD = ['bright', 'good', 'fine', 'best', 'perfect', 'this is the one', 'as it should', 'beautiful', 'excellent'];

export interface Understood {
  /** what the words mean, what they say most of first */
  readonly outcomes: readonly Outcome[];
  /** they only say that it went well */
  readonly well: boolean;
  /** where they mean nothing that is known: what comes nearest */
  readonly nearest: readonly Outcome[];
}

/** What somebody's words mean: `bright, but a dark band across the handle` is *dark bars*. */
export function understand(given: string): Understood {
  const all = wordsOf(given);
  const plainly = all.filter((w, i) => !all.slice(Math.max(0, i - 2), i).some(x => NOT.includes(x)) && !NOT.includes(w));
  const said = OUTCOME_NAMES.map(name => ({ name, weight: Math.max(...[name, ...OUTCOMES[name]].map(p => meant(p, all, plainly))) })).filter(x => x.weight > 0).sort((a, b) => b.weight - a.weight);
  // What is said in more words includes what is said in fewer of the same: `dark bands over the depth` is no matter of bars at an edge.
  const most = said[0]?.weight ?? 0;
  const outcomes = said.filter(x => x.weight >= most - 0.5).map(x => x.name);
  if (outcomes.length > 0) return { outcomes, well: false, nearest: [] };
  if (GOOD.some(p => meant(p, all, plainly) > 0)) return { outcomes: [], well: true, nearest: [] };
  return { outcomes: [], well: false, nearest: nearestOf(given, all) };
}

const NOT = ['no', 'not', 'without', 'never', 'nor'];
/** They carry no meaning of their own in an outcome. */
const SMALL = new Set(['the', 'a', 'an', 'at', 'in', 'of', 'on', 'it', 'is', 'was', 'and', 'or', 'to', 'are', 'were', 'all', 'should', 'as', 'be', 'than', 'everything', 'where', 'so', 'very', 'quite', 'rather', 'bit', 'its', 'with', 'from', 'over', 'any']);

const wordsOf = (text: string): string[] => text.toLowerCase().normalize('NFKC').split(/[^\p{L}\p{N}]+/u).filter(w => w !== '');

/** How many words of a phrase the text says; 0 unless it says all. A phrase that denies something is looked for in the whole text. */
function meant(phrase: string, all: readonly string[], plainly: readonly string[]): number {
  const wanted = wordsOf(phrase).filter(w => !SMALL.has(w));
  const among = wanted.some(w => NOT.includes(w)) ? all : plainly;
  return wanted.length > 0 && wanted.every(w => among.some(x => alike(x, w))) ? wanted.length : 0;
}

/** The same word, or another ending of it. */
function alike(a: string, b: string): boolean {
  if (a === b) return true;
  const [short, long] = a.length <= b.length ? [a, b] : [b, a];
  return short.length >= 4 && long.length - short.length <= 3 && long.startsWith(short.replace(/[ey]$/, ''));
}

/** The outcomes that share a word, one misspelt, or most letters. */
function nearestOf(given: string, all: readonly string[]): Outcome[] {
  const text = wordsOf(given).join(' ');
  const scored = OUTCOME_NAMES.map(name => {
    const phrases = [name, ...OUTCOMES[name]];
    const near = Math.min(...phrases.map(p => distance(p, text) / Math.max(p.length, text.length)));
    const shared = Math.max(...phrases.map(p => wordsOf(p).filter(w => !SMALL.has(w) && all.some(x => alike(x, w) || (w.length > 3 && distance(x, w) <= (w.length > 5 ? 2 : 1)))).length / wordsOf(p).filter(w => !SMALL.has(w)).length));
    return { name, score: Math.max(shared, 1 - near) };
  });
  return scored.filter(s => s.score >= 0.6).sort((a, b) => b.score - a.score).slice(0, 3).map(s => s.name);
}

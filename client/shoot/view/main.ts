/** The page in the panel: counts by the clock, shows and sounds what is to be done, and tells how far somebody is. What is written is up to the panel. */
import { Sound } from '../../plan/view/sound.ts';
import { digits, look, spoken } from '../clock.ts';
import { isRun, isToPage, type Evening, type FromPage } from '../messages.ts';
import { due, end, isUnderWay, later, open, settle, stop, turn, written, type Run } from '../run.ts';
import { Dark } from './dark.ts';
import { Lists } from './lists.ts';
import { AMISS, OPEN, OVER, SETTLED, SOON, STOPPED } from './tones.ts';

declare function acquireVsCodeApi(): { postMessage(message: FromPage): void; getState(): unknown; setState(state: Run): void };
const editor = acquireVsCodeApi();
const element = (id: string): HTMLElement => document.getElementById(id)!;
const [title, phase, left, go, halt, said] = ['title', 'phase', 'left', 'go', 'stop', 'said'].map(element) as [HTMLElement, HTMLElement, HTMLElement, HTMLButtonElement, HTMLButtonElement, HTMLElement];

const kept = editor.getState();
let run: Run | undefined = isRun(kept) ? kept : undefined;
let evening: Evening | undefined;
/** the last second that was shown, and when it was last told to the panel */
let [second, told] = [Infinity, 0];
const sound = new Sound();
let ticking = false;
/** the entry was asked for and is not on the page: whoever wants may go on without it */
let unwritten = false;
const dark = new Dark(element('cover'), element('darken'), () => evening?.dim.hue ?? 'black');
const lists = new Lists(document.querySelector('main')!, change => { if (run) keep(change(run)); });

/** Four looks a second: what is shown is made of the clock each time. */
const LOOK = 250;
/** The panel keeps it as often, ms; what is changed it hears of at once. */
const TELL = 5000;

function keep(next: Run, over?: string): void {
  const changed = next.n !== run?.n;
  run = next;
  editor.setState(next);
  if (changed || Date.now() - told > TELL || over !== undefined) {
    told = Date.now();
    editor.postMessage({ kind: 'run', run: next, ...(over === undefined ? {} : { over }) });
  }
  if (changed) show();
}

/** What the keys and the button take next. */
function step(): void {
  if (!run) return;
  hear();
  const now = Date.now();
  if (run.phase === 'ready' && run.settle > 0) {
    dark.set(true);
    keep(settle(run, now));
  } else if (run.phase !== 'exposed' && due(run) > 0) {
    dark.set(true);
    keep(open(run, now));
    sound.say(OPEN);
  } else if (run.phase === 'exposed') write();
  else say('Say first how long the shutter is to be open.');
}

function cease(): void {
  if (!run || (run.phase !== 'settling' && run.phase !== 'settled' && run.phase !== 'exposing')) return;
  const was = run.phase;
  const next = stop(run, Date.now());
  keep(next);
  quiet();
  sound.say(STOPPED);
  say(was === 'exposing' ? `Stopped after ${spoken((next.opened.at(-1) ?? 0) * 1000)}: close the shutter.` : 'Stopped. Nothing was exposed, and nothing is written.');
  if (was === 'exposing') write();
}

/** A browser lets it be heard only after somebody has pressed something in the page. */
function hear(): void {
  if (ticking) return;
  ticking = true;
  sound.begin();
}
function quiet(): void {
  if (!ticking) return;
  ticking = false;
  sound.end();
}

function write(): void {
  if (run?.phase !== 'exposed') return;
  const now = new Date();
  const two = (n: number): string => String(n).padStart(2, '0');
  editor.postMessage({ kind: 'write', run, on: `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}` });
}

function beat(): void {
  if (!run?.count) return;
  const { run: next, said: words, over } = turn(run, Date.now());
  if (words !== undefined) {
    say(words);
    sound.say(AMISS);
  }
  keep(next, over);
  if (over === 'settled') sound.say(SETTLED);
  if (over === 'exposed') {
    quiet();
    sound.say(OVER);
    if (words === undefined) say('The exposure is over: close the shutter.');
    write();
  }
  count();
}

function count(): void {
  if (!run?.count || (run.phase !== 'settling' && run.phase !== 'settled' && run.phase !== 'exposing')) { left.textContent = ''; second = Infinity; return; }
  const now = look(run.count, Date.now());
  left.textContent = run.phase === 'settled' ? `rested ${spoken(Math.floor(now.gone / 1000) * 1000)}` : digits(now.left);
  const s = Math.ceil(now.left / 1000);
  if (s !== second && s > 0 && s <= 3 && run.phase !== 'settled') sound.say(SOON);
  second = s;
  // The end is told when it comes, not at the next look.
  if (now.left > 0 && now.left < LOOK && run.phase !== 'settled') setTimeout(beat, now.left);
}

const PHASES: Readonly<Record<Run['phase'], (e: Evening | undefined, run: Run) => string>> = {
  ready: (e, run) => (isUnderWay(run) ? between(e, run) : ''),
  settling: e => e?.handsOff ?? 'Hands off.', settled: e => `The table has rested. ${e?.away ?? ''}`, exposing: (_, run) => `The shutter is open${nameOf(run)}.`, exposed: closing,
};
/** What is done now that the shutter was open. */
function closing(e: Evening | undefined, { phase, opened }: Run): string {
  const all = e?.openings ?? [];
  return (phase === 'exposed' ? all.at(-1) : all[opened.length - 1])?.close ?? 'Shutter closed.';
}
/** Shown large, since the list below may be out of sight in the dark. */
function between(e: Evening | undefined, run: Run): string {
  const change = e?.openings[run.opened.length]?.change ?? [];
  return [closing(e, run), `Then${nameOf(run)}.`, ...change.map(c => (c.small === undefined ? c.text : `${c.text.replace(/\.$/, '')}: ${c.small}.`))].join(' ');
}
const nameOf = ({ exposures, opened }: Run): string => { const name = exposures[opened.length]?.name; return name === undefined ? '' : `: ${name}`; };

function show(): void {
  if (!run) return;
  const { phase: now, settle: rest } = run;
  const exposure = due(run);
  document.body.dataset['phase'] = now;
  title.textContent = evening ? `Shot ${evening.shot} of “${run.setup}”` : `“${run.setup}”`;
  phase.textContent = PHASES[now](evening, run);
  const opening = exposure > 0 ? `Open the Shutter for ${spoken(exposure * 1000)}${nameOf(run)}` : '';
  const next = { ready: rest > 0 ? `Hands Off: Settle ${spoken(rest * 1000)}` : opening, settling: exposure > 0 ? 'Open Now' : '', settled: opening, exposing: '', exposed: 'Write It Down' }[now];
  button(go, next);
  button(halt, { ready: isUnderWay(run) ? 'End Here: Write It Down' : '', settling: 'Stop', settled: 'Begin Anew', exposing: 'Stop: Close the Shutter', exposed: unwritten ? 'Leave It Unwritten' : '' }[now]);
  // Between two exposures Enter is not to end what is under way.
  if (now === 'ready' && document.activeElement === halt && !go.hidden) go.focus();
  if (evening) lists.show(evening, run);
  count();
}

function button(b: HTMLButtonElement, words: string): void {
  const had = b === document.activeElement;
  b.hidden = words === '';
  b.textContent = words;
  // Whoever works by keys is not left without a place.
  if (had && b.hidden) (go.hidden ? halt : go).focus();
}

function say(words: string): void { said.textContent = words; }

go.addEventListener('click', step);
halt.addEventListener('click', () => {
  if (run?.phase === 'ready') {
    keep(end(run));
    write();
    return;
  }
  if (run?.phase !== 'exposed') { cease(); return; }
  unwritten = false;
  keep(written(run));
  say('That shot is not written down.');
});
element('darken').addEventListener('click', () => { dark.toggle(); });
window.addEventListener('keydown', e => {
  if (e.ctrlKey || e.metaKey || e.altKey || e.repeat) return;
  const writing = !dark.is && e.target instanceof HTMLInputElement && e.target.type !== 'checkbox';
  const does = e.key === 'Escape' ? cease : e.key.toLowerCase() === 'd' && !writing ? () => { dark.toggle(); } : dark.is && (e.key === 'Enter' || e.key === ' ') ? step : undefined;
  if (!does) return;
  e.preventDefault();
  e.stopImmediatePropagation();
  if (run?.count && run.phase !== 'exposed') hear();
  does();
}, true);

window.addEventListener('message', ({ data }: MessageEvent<unknown>) => {
  if (!isToPage(data)) return;
  switch (data.kind) {
    case 'evening':
      evening = data.evening;
      run = later(data.run, run)!;
      editor.setState(run);
      dark.show();
      if (run !== data.run) editor.postMessage({ kind: 'run', run });
      show();
      beat();
      if (run.phase === 'exposed') write();
      break;
    case 'nothing': lists.nothing(data.words); break;
    case 'written': unwritten = false; say([evening?.openings.at(-1)?.close ?? 'Shutter closed.', `Shot ${data.shot} is written on the page${data.saved ? '' : ', but not saved yet'}. Tomorrow “Note the Outcome” adds what came out.`, ...data.notes].join(' ')); break;
    case 'not written': unwritten = true; show(); say(`Not written down yet. ${data.words}`); sound.say(AMISS); break;
  }
});
setInterval(beat, LOOK);
show();
beat();
editor.postMessage({ kind: 'ready' });

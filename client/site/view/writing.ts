/** A text that can be changed, over the same text in colours. Its keys are those of an editor. */
import type { PictureMark } from '../../../server/lsp/protocol.ts';
import { made } from '../../review/view/dom.ts';
import { patch, type Drawn } from '../../plan/view/patch.ts';
import { codeOf } from '../result.ts';
import type { Looked } from '../shown.ts';
import { HTML } from './html.ts';

const INDENT = '  ';

export class Writing {
  readonly area = made('textarea');
  private drawn: readonly Drawn<HTMLElement>[] = [];
  /** how a line was coloured last: it most likely is the same where it stands now */
  private known = new Map<string, PictureMark>();
  private leaves = false;

  /** @param code holds the text, and its colours @param changed the text is another one now */
  constructor(private readonly code: HTMLElement, name: string, changed: () => void) {
    const { area } = this;
    area.value = code.textContent.replace(/\n$/, '');
    area.spellcheck = false;
    for (const [attribute, value] of [['autocapitalize', 'off'], ['autocomplete', 'off'], ['autocorrect', 'off'], ['aria-label', `Text of ${name}`]] as const) area.setAttribute(attribute, value);
    code.textContent = '';
    code.parentElement!.setAttribute('aria-hidden', 'true');
    this.plain();
    area.addEventListener('input', () => { this.plain(); changed(); });
    area.addEventListener('keydown', e => { this.key(e); });
    area.addEventListener('blur', () => { this.leaves = false; });
  }

  get text(): string { return `${this.area.value}\n`; }

  /** As undo can take back. */
  replace(text: string): void {
    this.area.focus();
    this.area.select();
    insert(text.replace(/\n$/, ''));
    this.area.setSelectionRange(0, 0);
  }

  colour(looked: Looked): void {
    const marks = codeOf(looked);
    this.known = new Map(looked.texts.map((line, i) => [line, marks[i]!]));
    // Somebody may have typed on meanwhile.
    if (looked.texts.join('\n') === this.text) this.draw(marks);
    else this.plain();
  }

  /** Shows a place of the text. */
  select(line: number, start: number, end: number): void {
    const before = this.area.value.split('\n').slice(0, line).reduce((n, l) => n + l.length + 1, 0);
    this.area.focus({ preventScroll: true });
    this.area.setSelectionRange(before + start, before + end);
    this.code.children[line]?.scrollIntoView({ block: 'nearest' });
  }

  /** The text as it is, at once: in the colours that its lines had. */
  private plain(): void {
    const lines = this.area.value.split('\n');
    this.draw(lines.map(line => this.known.get(line) ?? codeOf({ texts: [line], colours: [], findings: [] })[0]!));
  }

  private draw(marks: readonly PictureMark[]): void { this.drawn = patch<HTMLElement>(HTML, this.code, this.drawn, marks); }

  private key(e: KeyboardEvent): void {
    if (e.key === 'Escape') { this.leaves = true; return; }
    if (e.ctrlKey || e.metaKey || e.altKey || e.isComposing) return;
    if (e.key === 'Tab' && !this.leaves) {
      e.preventDefault();
      if (e.shiftKey) this.outdent();
      else insert(INDENT);
    } else if (e.key === 'Enter') {
      e.preventDefault();
      insert(`\n${/^\s*/.exec(this.before())![0]}${/\{\s*$/.test(this.before()) ? INDENT : ''}`);
    }
  }

  /** The line of the cursor up to it. */
  private before(): string {
    const { value, selectionStart } = this.area;
    return value.slice(value.lastIndexOf('\n', selectionStart - 1) + 1, selectionStart);
  }

  private outdent(): void {
    const { area } = this;
    const begin = area.value.lastIndexOf('\n', area.selectionStart - 1) + 1;
    const blanks = /^ {1,2}/.exec(area.value.slice(begin))?.[0].length ?? 0;
    if (blanks === 0) return;
    const [start, end] = [Math.max(begin, area.selectionStart - blanks), Math.max(begin, area.selectionEnd - blanks)];
    area.setSelectionRange(begin, begin + blanks);
    insert('');
    area.setSelectionRange(start, end);
  }
}

/** The only way to change a text so that undo knows of it. */
// eslint-disable-next-line @typescript-eslint/no-deprecated
const insert = (text: string): void => { document.execCommand('insertText', false, text); };

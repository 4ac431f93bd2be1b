/** The panel beside an open plate: in the one colour that goes with the safelight and that no plate of the page takes, else black. Which of them is up to the server. */
type Hue = 'red' | 'green' | 'blue' | 'black';

export class Dark {
  is = false;

  /** @param hue as the page is now: of one that nobody knows it is black */
  constructor(private readonly cover: HTMLElement, private readonly button: HTMLElement, private readonly hue: () => Hue) {
    cover.addEventListener('click', () => { this.set(false); });
  }

  toggle(): void { this.set(!this.is); }

  set(is: boolean): void {
    this.is = is;
    this.show();
  }

  show(): void {
    const hue = this.hue();
    mark('dim', this.is ? (hue === 'black' ? 'grey' : hue) : undefined);
    mark('cover', this.is ? hue : undefined);
    this.cover.hidden = !this.is;
    this.button.textContent = this.is ? 'Light' : 'Dark';
  }
}

function mark(name: string, value: string | undefined): void {
  if (value === undefined) document.body.removeAttribute(`data-${name}`);
  else document.body.setAttribute(`data-${name}`, value);
}

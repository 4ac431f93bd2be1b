/** A question at the top of the window. What is typed is what is answered, however quickly Enter follows. */
import { InputBoxValidationSeverity, QuickInputButtons, ThemeIcon, window } from 'vscode';

export interface Box {
  readonly title: string;
  readonly prompt: string;
  readonly placeholder: string;
  readonly value: string;
  /** shown until something is typed */
  readonly said?: { readonly words: string; readonly kind: 'note' | 'warning' | 'error' } | undefined;
  /** it leads back to the question before */
  readonly back?: boolean;
  /** what a button with a list offers */
  readonly list: string;
}

const SEVERITY = { note: InputBoxValidationSeverity.Info, warning: InputBoxValidationSeverity.Warning, error: InputBoxValidationSeverity.Error } as const;

/** Undefined: nobody wants to answer any more. */
export function askIn({ title, prompt, placeholder, value, said, back, list }: Box): Promise<string | { readonly to: 'back' | 'list' } | undefined> {
  const box = window.createInputBox();
  const choose = { iconPath: new ThemeIcon('list-ordered'), tooltip: list };
  Object.assign(box, { title, prompt, placeholder, value, ignoreFocusOut: true, buttons: [...(back ? [QuickInputButtons.Back] : []), choose] });
  if (said) box.validationMessage = { message: said.words, severity: SEVERITY[said.kind] };
  return new Promise(resolve => {
    // What was said is of what was there before.
    box.onDidChangeValue(() => { box.validationMessage = undefined; });
    box.onDidTriggerButton(b => { resolve({ to: b === QuickInputButtons.Back ? 'back' : 'list' }); box.hide(); });
    box.onDidAccept(() => { resolve(box.value); box.hide(); });
    box.onDidHide(() => { resolve(undefined); box.dispose(); });
    box.show();
  });
}

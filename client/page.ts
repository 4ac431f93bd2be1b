/** The page that a command is about: the one that somebody writes on; where nobody writes anywhere, as beside the guide or a panel, the one that is in sight. */
import { l10n, window, type TextEditor } from 'vscode';

export function pageAtHand(): TextEditor | undefined {
  const { activeTextEditor: active, visibleTextEditors: seen } = window;
  if (active) return isPage(active) ? active : undefined;
  const pages = seen.filter(isPage);
  return pages.length === 1 ? pages[0] : undefined;
}

const isPage = ({ document }: TextEditor): boolean => document.languageId === 'plate';

export const sayNoPage = (): void => { void window.showInformationMessage(l10n.t('There is no page in front. Open one that ends in .plate, or begin one with “Platewright: New Setup”.')); };

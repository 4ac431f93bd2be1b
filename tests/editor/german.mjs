// The extension's own words in an editor whose language is German: titles from the manifest, and what the client says.
import { desk } from './host/desk.mjs';

const { page, command } = desk;
const { keyboard } = page;

export const STEPS = {
  async 'its commands have German titles, and the list of layouts a German question'() {
    await page.locator('.explorer-folders-view .monaco-list-row', { hasText: 'whelk.plate' }).waitFor({ timeout: 60_000 });
    await command('Platewright: Neuer Aufbau');
    await page.locator('.quick-input-widget input[placeholder^="Neuer Aufbau: womit beginnen?"], .quick-input-widget:has-text("Neuer Aufbau: womit beginnen?")').first().waitFor();
    await keyboard.press('Escape');
  },
  async 'the status bar tells the figures of a page in German'() {
    await desk.open('whelk.plate');
    await page.locator('.statusbar-item', { hasText: 'Wegunterschied' }).waitFor();
  },
  async 'settings are told in German'() {
    await command('Preferences: Open Settings (UI)');
    await page.locator('.settings-editor .suggest-input-container').click();
    await keyboard.type('platewright');
    await page.locator('.settings-editor', { hasText: 'Sagt über jedem' }).waitFor();
  },
};

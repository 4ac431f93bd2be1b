/** What the panel says where it has nothing to go through. */
export const GONE_PAGE = 'This page can’t be read any more. What was counted goes on; the entry can be written when the page is back.';
export const STARTING = 'The server of Platewright is starting.';
export const STOPPED = 'The server of Platewright is not running. What is counted goes on; for the entry the command “Platewright: Restart Server” is needed.';
export const FAILED = 'What there is to do could not be told. The command “Platewright: Show Output” says why.';
export const NO_SHOT = 'Nothing is being shot. The command “Platewright: Shoot” begins with the setup at the cursor.';
export const OTHER = (setup: string): string => `“${setup}” is being shot: what was begun there is shown. Stop it or let it end, then shoot another setup.`;
export const STILL = (setup: string): string => `“${setup}” is still being counted by the clock, without a sound. “Platewright: Shoot” goes on with it.`;
export const OVER = 'The exposure is over: close the shutter.';
export const SETTLED = 'The table has rested for as long as was said.';

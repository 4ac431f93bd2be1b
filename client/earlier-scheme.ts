/** Scheme of the addresses of earlier texts, which are only looked at: no figures are shown of them, and no panel follows them. */
export const EARLIER = 'platewright-before';

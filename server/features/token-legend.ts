/** What colours there are for words. */

/** The protocol's own types as far as they go, so that every theme has a colour for them. */
export const TOKEN_TYPES = ['type', 'variable', 'event', 'namespace', 'property', 'enumMember', 'item', 'unit', 'sought', 'unknownWord'] as const;
/** `readonly`: nobody writes its value there, as of a `let` where it is used and of results. */
export const TOKEN_MODIFIERS = ['declaration', 'readonly'] as const;

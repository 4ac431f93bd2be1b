/** Lines that part between words only. */

const UNIT = /(?<=\d[.,]?\)?) (?=(?:[nµmc]?m|[nµm]?W(?:\/cm²)?|%|[kMGT]?Hz|°C?|s|ms|min|h|K|stops?|points|[µm]?J\/cm²|fringes\/min|lines\/mm)(?![\p{L}\d]))/gu;

/** Keeps a value with its unit, a give with its sign, and the numbers of a place together: the blanks between them do not break. */
export const whole = (text: string): string => text.replace(UNIT, '\u00a0').replaceAll(' ± ', ' ±\u00a0').replace(/\((-?[\d.−]+), (?=-?[\d.−]+(?:, -?[\d.−]+)?\))/gu, '($1,\u00a0').replace(/(\)) (?=mm\b)/gu, '$1\u00a0');

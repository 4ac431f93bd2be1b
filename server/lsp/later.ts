/** Large, and of no use before a page is open. */
export const later = async () => import('./features.ts');

/** Diagnostics channel on which the path of each page is told when it is about to be made. */
export const pageChannel = 'copperplate:page';

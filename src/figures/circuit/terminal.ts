/** Where a net leaves the drawing. */
export const terminal = (): string => '<circle class="drawn-terminal" r="2.6"/>';

/** Where three conductors or more meet. */
export const junction = (heavy: boolean): string => `<circle class="drawn-dot" r="${heavy ? 3 : 2.2}"/>`;

import type { Method } from '../../spec/method-schema.ts';

/**
 * A circuit of a method as a spec has it, with the values of the worked example and what each stands for behind them; what
 * has a usual value stands as a remark.
 * @example specBlock(divider).split('\n')[2] // '    method: voltage-divider'
 */
export function specBlock({ id, symbols, example }: Method): string {
  const lines = Object.entries(symbols).map(([symbol, { says, usual }]) => {
    const given = example.given[symbol];
    if (given !== undefined) return [`      ${symbol}: ${typed(given)}`, says] as const;
    return [`      # ${symbol}: ${typed(usual!)}`, `${says}; usual`] as const;
  });
  const column = Math.min(48, Math.max(...lines.map(([text]) => text.length)) + 1);
  const given = lines.map(([text, says]) => `${text.padEnd(column)} # ${says}`);
  return ['circuits:', `  ${id.replaceAll('-', '_')}:`, `    method: ${id}`, '    given:', ...given].join('\n');
}

/** Quoted where YAML would read it otherwise. */
const typed = (text: string): string =>
  /[:#{}[\],&*!|>'"%@`]|^[-?]/.test(text.replaceAll(/ ?%/g, '')) ? JSON.stringify(text) : text;

import type { Leaves } from '../expression/readings/typeset.ts';
import { texSymbol } from '../expression/tex-symbol.ts';
import type { Tree } from '../expression/tree.ts';
import { mentioned } from '../spec/names.ts';

/** Names of sums over the board, as a symbol. */
const totals: Readonly<Record<string, string>> = { heat: 'P_board', stored_energy: 'E_board' };

/** Circuit and symbol of an id; a condition of the board has no circuit. */
export function parted(id: string): { circuit?: string; symbol: string } {
  const point = id.indexOf('.');
  return point < 0 ? { symbol: id } : { circuit: id.slice(0, point), symbol: id.slice(point + 1) };
}

/** TeX of what an id stands for, without its circuit. `idTex('pack.V_bat')` → `V_{\mathrm{bat}}` */
export function idTex(id: string): string {
  const { circuit, symbol } = parted(id);
  if (circuit === 'derating') return texSymbol(`k_${symbol}`);
  if (circuit === 'board') return texSymbol(totals[symbol] ?? `I_${symbol.replace('.', '_')}`);
  // What firmware calls its constants is a name, not a symbol: it has a word in it, as V_PER_COUNT and not V_RWM.
  if (/^[A-Z][A-Z0-9]*(_[A-Z0-9]+)+$/.test(symbol) && /[A-Z]{4}/.test(symbol))
    return `\\mathrm{${symbol.replaceAll('_', '\\_')}}`;
  return texSymbol(difference(symbol));
}

/** A difference is typed with a d before it: `dV_sag` is ΔV_sag. */
const difference = (symbol: string): string => symbol.replace(/^d([A-Z])(?=_|$)/, 'Delta_$1');

/**
 * How the symbols of an equation are written: an index with the circuit's name where two circuits of one equation, or
 * another one and its own, use the same symbol.
 */
export function symbolLeaves(tree: Tree | readonly Tree[], circuit: string | undefined): Leaves {
  const trees = Array.isArray(tree) ? (tree as readonly Tree[]) : [tree as Tree];
  const ids = new Set(trees.flatMap((one) => [...mentioned(one)]));
  return {
    symbol: (id) => ({
      tex: clashes(id, ids, circuit) ? texSymbol(`${difference(parted(id).symbol)}_${parted(id).circuit}`) : idTex(id),
      binds: 'atom',
    }),
  };
}

function clashes(id: string, ids: ReadonlySet<string>, circuit: string | undefined): boolean {
  const own = parted(id);
  if (!own.circuit || own.circuit === circuit || own.circuit === 'derating' || own.circuit === 'board') return false;
  return [...ids].some((other) => other !== id && parted(other).symbol === own.symbol);
}

import type { DrawingRun } from './drawing.ts';
import { idTex } from './symbols.ts';

const letters: Readonly<Record<string, string>> = {
  ...{ alpha: 'α', beta: 'β', gamma: 'γ', delta: 'δ', varepsilon: 'ε', zeta: 'ζ', eta: 'η', theta: 'θ', iota: 'ι' },
  ...{ kappa: 'κ', lambda: 'λ', mu: 'μ', nu: 'ν', xi: 'ξ', pi: 'π', rho: 'ρ', sigma: 'σ', tau: 'τ', upsilon: 'υ' },
  ...{ varphi: 'φ', chi: 'χ', psi: 'ψ', omega: 'ω', Gamma: 'Γ', Delta: 'Δ', Theta: 'Θ', Lambda: 'Λ', Xi: 'Ξ', Pi: 'Π' },
  ...{ Sigma: 'Σ', Upsilon: 'Υ', Phi: 'Φ', Psi: 'Ψ', Omega: 'Ω' },
};

/**
 * A symbol as a drawing letters it: the sloping letter and its index, the same that equations print.
 * @example symbolRuns('bus_sense.R_top') // R, then top as its index
 */
export function symbolRuns(id: string): DrawingRun[] {
  const tex = idTex(id);
  const cut = tex.search(/(?<!\\)_\{/);
  const [head, index] = cut < 0 ? [tex, ''] : [tex.slice(0, cut), tex.slice(cut + 2, -1)];
  const runs: DrawingRun[] = [{ text: lettered(head), face: upright(head) ? 'value' : 'symbol' }];
  return index ? [...runs, { text: lettered(index), face: upright(index) ? 'value' : 'symbol', low: true }] : runs;
}

const upright = (tex: string): boolean => tex.includes('\\mathrm') || /^[\d,]+$/.test(tex);

const lettered = (tex: string): string =>
  tex
    .replaceAll(/\\mathrm\{((?:[^{}]|\\.)*)\}/g, '$1')
    .replaceAll(/\\([A-Za-z]+) ?/g, (whole, name: string) => letters[name] ?? whole)
    .replaceAll('\\', '');

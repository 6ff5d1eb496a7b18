// The parts we use of packages that come without types.

declare module 'fontkit' {
  export interface Font {
    readonly unitsPerEm: number;
    hasGlyphForCodePoint(code: number): boolean;
    glyphForCodePoint(code: number): { readonly advanceWidth: number };
  }
  export function openSync(path: string): Font;
}

declare module 'qrcode' {
  export function create(
    text: string,
    options: { errorCorrectionLevel: 'L' | 'M' | 'Q' | 'H' },
  ): { readonly modules: { readonly size: number; get(row: number, column: number): number | boolean } };
}

/**
 * File name of a printed packet: what a reviewer looks for in a download folder.
 * @example pdfName({ document: 'OC-210', revisionMark: 'B' }) // 'OC-210-B.pdf'
 */
export const pdfName = ({
  document,
  revisionMark,
}: {
  readonly document: string;
  readonly revisionMark: string;
}): string => `${`${document}-${revisionMark}`.replaceAll(/[^A-Za-z0-9._-]+/g, '-')}.pdf`;

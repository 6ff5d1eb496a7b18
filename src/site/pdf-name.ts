interface Named {
  readonly document: string;
  readonly revisionMark: string;
}

/**
 * Name of a packet without ending: what a reviewer looks for in a download folder.
 * @example packetName({ document: 'OC-210', revisionMark: 'B' }) // 'OC-210-B'
 */
export const packetName = ({ document, revisionMark }: Named): string =>
  `${document}-${revisionMark}`.replaceAll(/[^A-Za-z0-9._-]+/g, '-');

/** File name of a printed packet. */
export const pdfName = (packet: Named): string => `${packetName(packet)}.pdf`;

/** File name of an archived packet. */
export const archiveName = (packet: Named): string => `${packetName(packet)}.zip`;

/**
 * The one date that an output carries: the spec's date of issue, or that of SOURCE_DATE_EPOCH where the environment sets it.
 * @param epoch  seconds since 1970, as text; undefined or empty means not set
 * @returns `2026-03-18`, a day in Greenwich
 * @throws RangeError for an epoch that is none, or outside the years 1980 to 2099 that a zip can state
 * @see https://reproducible-builds.org/specs/source-date-epoch/
 */
export function madeDate(issued: string, epoch: string | undefined): string {
  if (epoch === undefined || epoch === '') return issued.slice(0, 10);
  const day = /^\d{1,11}$/.test(epoch) ? new Date(Number(epoch) * 1000).toISOString().slice(0, 10) : '';
  if (day < '1980' || day >= '2100')
    throw new RangeError(
      `found SOURCE_DATE_EPOCH=${epoch}; expected whole seconds since 1970 of a day from 1980 to 2099, or none: then every date is the spec's own.`,
    );
  return day;
}

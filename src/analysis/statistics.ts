export { betaCdf, betaQuantile } from './statistics/beta.ts';
export { clopperPearson, type Fraction } from './statistics/binomial.ts';
export { normalCdf, normalQuantile } from './statistics/normal.ts';
export { Sum, type Summary, summarise } from './statistics/summarise.ts';

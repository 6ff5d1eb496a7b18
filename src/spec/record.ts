import type { commentClasses, outcomes, reviewKinds, verifications } from './record-schema.ts';

export type Verification = (typeof verifications)[number];

export interface Requirement {
  readonly id: string;
  readonly says: string;
  /** Check ids; `stage.*` was resolved. */
  readonly shownBy: readonly string[];
  readonly methods: readonly Verification[];
  /** Test points or results that readings are to show. */
  readonly tested: readonly string[];
  readonly criterion?: string;
  readonly evidence: readonly string[];
  readonly why?: string;
  readonly from?: string;
}

export interface Deviation {
  /** `D-1`, in the order of the file. */
  readonly id: string;
  readonly check: string;
  readonly reason: string;
  readonly approved: string;
  readonly by?: string;
  readonly effect?: string;
  readonly appliesTo?: string;
  readonly until?: string;
}

export interface Decision {
  readonly id: string;
  readonly what: string;
  readonly why: string;
  readonly insteadOf: readonly string[];
  readonly date: string;
  readonly by?: string;
  /** Ids of circuits, results, inputs, checks or requirements. */
  readonly about: readonly string[];
}

export interface Action {
  readonly id: string;
  readonly says: string;
  readonly who?: string;
  readonly due?: string;
  readonly blocksRelease: boolean;
  readonly about: readonly string[];
  /** Day on which it was closed; open without it. */
  readonly closed?: string;
  readonly answer?: string;
}

export interface Criterion {
  readonly says: string;
  readonly met?: boolean;
  readonly remark?: string;
}

export interface Comment {
  readonly id: string;
  readonly says: string;
  readonly class: (typeof commentClasses)[number];
  readonly by?: string;
  readonly about: readonly string[];
  readonly answer?: string;
  readonly action?: string;
}

export interface ReviewRecord {
  readonly kind: (typeof reviewKinds)[number];
  readonly date: string;
  /** Roles. */
  readonly present: readonly string[];
  readonly aims: readonly string[];
  readonly entrance: readonly Criterion[];
  readonly success: readonly Criterion[];
  readonly comments: readonly Comment[];
  readonly outcome?: (typeof outcomes)[number];
  readonly conditions: readonly string[];
}

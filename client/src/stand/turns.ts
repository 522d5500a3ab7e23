/** A part of a page between two heights, both from 0 (its top) to 1. */
export interface Part {
  /** From 0. */
  page: number;
  from: number;
  to: number;
}

/** What lies on the stand at once, from top to bottom, and the page that it belongs to. */
export interface View {
  page: number;
  parts: Part[];
}

/** Heights at which a page may be cut, between its systems; empty where it has but one. */
export type Cuts = number[];

const MIDDLE = 0.5;

/** Where a page is cut in two: between systems, as near to its middle as can be. */
const middle = (cuts: Cuts): number =>
  cuts.reduce<number | undefined>((best, cut) => (best === undefined || Math.abs(cut - MIDDLE) < Math.abs(best - MIDDLE) ? cut : best), undefined) ??
  MIDDLE;

const whole = (page: number): Part => ({ page, from: 0, to: 1 });

/** Page after page; with halves, on an upright screen the next page’s upper half comes above the lower half that is still
 * being played, and on a broad one the halves come one after the other. */
export function views(cuts: Cuts[], hasHalves: boolean, isUpright: boolean): View[] {
  return cuts.flatMap((own, page): View[] => {
    const cut = middle(own);
    if (!hasHalves) return [{ page, parts: [whole(page)] }];
    if (!isUpright) {
      // A page of one system is not cut.
      return own.length === 0
        ? [{ page, parts: [whole(page)] }]
        : [
            { page, parts: [{ page, from: 0, to: cut }] },
            { page, parts: [{ page, from: cut, to: 1 }] },
          ];
    }
    const next = cuts[page + 1];
    if (next === undefined) return [{ page, parts: [whole(page)] }];
    // No more of it than is free above what stays.
    const upper = next.filter((c) => c <= cut + 0.01).at(-1);
    return upper === undefined || own.length === 0
      ? [{ page, parts: [whole(page)] }]
      : [
          { page, parts: [whole(page)] },
          { page, parts: [{ page: page + 1, from: 0, to: upper }, { page, from: cut, to: 1 }] },
        ];
  });
}

/** The view from which a height of a page is played: of several the last, where the next page shows already; -1: none. */
export const viewOf = (all: View[], page: number, height: number): number =>
  all.findLastIndex((v) => v.page === page && v.parts.some((p) => p.page === page && height >= p.from && height <= p.to));

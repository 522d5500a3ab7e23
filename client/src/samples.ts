import ferryBell from "../../samples/ferry-bell.abc?raw";
import lamps from "../../samples/lamps-along-the-quay.abc?raw";
import boats from "../../samples/paper-boats-by-the-steps.abc?raw";

/** Tunes of ours to begin with, by their titles. */
export const samples: [string, string][] = [ferryBell, lamps, boats].map((abc) => [/^T:(.*)$/m.exec(abc)?.[1]?.trim() ?? "", abc]);

import { sentences } from "../sentences";
import type { SeenStroke, TakeSeen } from "./takeApi";

const BAR = 44; // units of width
const LANE = 84; // units of height for each hand
const MOST = 120; // milliseconds; what lies further is drawn at the edge
const LEFT = 92;
const SIZE = 3.2;

/** When each stroke came against the tempo around it, the right hand above the left, along the bars. */
export function Timing({ strokes, bars }: { strokes: SeenStroke[]; bars: TakeSeen["bars"] }) {
  const says = sentences.hearing;
  const hands = (["right", "left"] as const).filter((hand) => strokes.some((s) => s.hand === hand));
  const width = LEFT + bars.length * BAR + 10;
  const height = hands.length * LANE + 30;
  const every = Math.max(1, Math.round(bars.length / 60));
  const words = hands.map((hand) => told(hand, strokes, bars)).join(" ");
  const y = (lane: number, late: number) => lane * LANE + LANE / 2 + (Math.max(-MOST, Math.min(MOST, late)) / MOST) * (LANE / 2 - 8);
  return (
    <figure className="timing">
      <figcaption>
        {says.timing} <span className="pencil">{words}</span>
      </figcaption>
      <div className="timing-roll" role="region" aria-label={says.timingLabel} tabIndex={0}>
        <svg viewBox={`0 0 ${width} ${height}`} width={width} height={height} role="img" aria-label={`${says.timingLabel}. ${words}`}>
          {bars.map((bar, i) => (
            <g key={i} className="timing-bar">
              <line x1={LEFT + i * BAR} x2={LEFT + i * BAR} y1={4} y2={height - 26} />
              {i % every === 0 && (
                <text x={LEFT + i * BAR + 2} y={height - 8}>
                  {bar.number === "0" ? "" : bar.number}
                </text>
              )}
            </g>
          ))}
          {hands.map((hand, lane) => (
            <g key={hand}>
              <line className="timing-beat" x1={LEFT} x2={width - 10} y1={y(lane, 0)} y2={y(lane, 0)} />
              <text className="timing-hand" x={0} y={y(lane, 0) + 5}>
                {says.lane(hand)}
              </text>
              <text x={LEFT - 6} y={y(lane, -MOST) + 8} textAnchor="end">
                {says.early}
              </text>
              <text x={LEFT - 6} y={y(lane, MOST)} textAnchor="end">
                {says.late2}
              </text>
              {strokes
                .filter((s) => s.hand === hand)
                .map((s, i) => (
                  <Point key={i} hand={hand} x={LEFT + (s.bar + s.place) * BAR} y={y(lane, s.late)} isFar={Math.abs(s.late) > MOST} />
                ))}
            </g>
          ))}
        </svg>
      </div>
    </figure>
  );
}

// The right hand’s strokes are rings, the left hand’s are squares; what lies beyond the edge points there.
function Point({ hand, x, y, isFar }: { hand: string; x: number; y: number; isFar: boolean }) {
  if (isFar) return <path className="timing-far" d={`M${x - 4} ${y + 4}L${x} ${y - 4}L${x + 4} ${y + 4}Z`} />;
  return hand === "right" ? (
    <circle className="timing-right" cx={x} cy={y} r={SIZE} />
  ) : (
    <rect className="timing-left" x={x - SIZE} y={y - SIZE} width={2 * SIZE} height={2 * SIZE} />
  );
}

function told(hand: "right" | "left", strokes: SeenStroke[], bars: TakeSeen["bars"]): string {
  const own = strokes.filter((s) => s.hand === hand).sort((a, b) => a.late - b.late);
  const sizes = own.map((s) => Math.abs(s.late)).sort((a, b) => a - b);
  const usual = sizes[Math.floor(sizes.length / 2)]!;
  const [first, last] = [own[0]!, own.at(-1)!];
  const number = (s: SeenStroke) => sentences.bar(bars[s.bar]?.number ?? "");
  return sentences.hearing.timingOf(hand, usual, -first.late, number(first), last.late, number(last));
}

import { useRef, useState } from "react";
import type { Brought } from "./api";
import { FileWord } from "./FileWord";
import { samples } from "./samples";
import { sentences } from "./sentences";
import { PlayIn } from "./tune/PlayIn";

interface Props {
  text: string;
  brought: Brought | undefined;
  number: number;
  isReading: boolean;
  problem: string | undefined;
  onText: (text: string) => void;
  onFile: (file: File) => void;
  onSample: (text: string) => void;
  onNumber: (number: number) => void;
  onClose: (() => void) | undefined;
}

/** A slip of paper to bring a tune on: a file, or written down; what was not understood stands at its line. */
export function Bring({ text, brought, number, isReading, problem, onText, onFile, onSample, onNumber, onClose }: Props) {
  const paper = useRef<HTMLTextAreaElement>(null);
  const [scroll, setScroll] = useState(0);
  const findings = brought?.findings ?? [];
  const marked = new Set(findings.filter((f) => f.severity !== "note").map((f) => f.line));
  const lines = text.split("\n");

  function goTo(line: number, column: number) {
    const start = lines.slice(0, line - 1).reduce((sum, l) => sum + l.length + 1, 0) + column - 1;
    paper.current?.focus();
    paper.current?.setSelectionRange(start, start);
  }

  return (
    <section className="bring" aria-labelledby="bring-title">
      <h1 id="bring-title">{sentences.bringTitle}</h1>
      <p>
        {sentences.bringLead}
        <FileWord accept=".abc,.musicxml,.xml,.mxl,.mid,.midi,.stridewright" onFile={onFile}>
          {sentences.bringPick}
        </FileWord>
        {sentences.bringKinds}
      </p>
      <PlayIn onFile={onFile} />
      <div className="written">
        <div className="line-numbers" aria-hidden="true">
          <div ref={(gutter) => void (gutter && (gutter.scrollTop = scroll))} className="line-scroll">
            {lines.map((_, i) => (
              <div key={i} className={marked.has(i + 1) ? "marked" : undefined}>
                {marked.has(i + 1) ? "✗ " : ""}
                {i + 1}
              </div>
            ))}
          </div>
        </div>
        <textarea
          ref={paper}
          aria-label={sentences.bringText}
          placeholder={sentences.bringText}
          rows={Math.min(14, Math.max(4, lines.length))}
          spellCheck={false}
          wrap={text ? "off" : "soft"}
          value={text}
          onScroll={(event) => setScroll(event.currentTarget.scrollTop)}
          onChange={(event) => onText(event.currentTarget.value)}
        />
      </div>
      <div className="findings" role="status">
        {isReading && <p>{sentences.bringing}</p>}
        {problem && <p className="pencil fault">{problem}</p>}
        {!isReading && brought && <p>{brought.tunes.length ? sentences.understood(brought.tunes.length) : sentences.nothingUnderstood}</p>}
        {findings.length > 0 && (
          <ul>
            {findings.map((finding, i) => (
              <li key={i} className={`pencil ${finding.severity}`}>
                <b>{sentences.severity[finding.severity]}</b>{" "}
                {finding.line && text ? (
                  <button
                    type="button"
                    className="word"
                    onClick={() => goTo(finding.line!, finding.column ?? 1)}
                  >
                    {finding.place}
                  </button>
                ) : (
                  finding.place
                )}{" "}
                {finding.message}
              </li>
            ))}
          </ul>
        )}
      </div>
      {brought && brought.tunes.length > 1 && (
        <fieldset className="choices">
          <legend>{sentences.whichTune}</legend>
          {brought.tunes.map((tune) => (
            <label key={tune.number} className="choice">
              <input type="radio" name="tune" checked={tune.number === number} onChange={() => onNumber(tune.number)} />
              <span className="choice-label">{sentences.tuneOf(tune.title, tune.key, tune.metre, tune.bars)}</span>
              {tune.chordsOnly && <span className="choice-about">{sentences.chordsOnly}</span>}
            </label>
          ))}
        </fieldset>
      )}
      <p>
        {sentences.bringSample}
        {samples.map(([title, abc], i) => (
          <span key={title}>
            {i === 0 ? "" : i === samples.length - 1 ? " or " : ", "}
            <button type="button" className="word" onClick={() => onSample(abc)}>
              {title}
            </button>
          </span>
        ))}
        .{" "}
        {onClose && (
          <button type="button" className="word aside" onClick={onClose}>
            {sentences.bringClose}
          </button>
        )}
      </p>
    </section>
  );
}

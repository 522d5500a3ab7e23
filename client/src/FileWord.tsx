import { useRef, type ReactNode } from "react";

interface Props {
  /** Endings of the files, such as `.mid,.midi`. */
  accept: string;
  /** What the file is for, where the word alone does not say it. */
  label?: string;
  children: ReactNode;
  onFile: (file: File) => void;
}

/** A word that lets one pick a file. The same file can be picked again. */
export function FileWord({ accept, label, children, onFile }: Props) {
  const picker = useRef<HTMLInputElement>(null);
  return (
    <>
      <button type="button" className="word" onClick={() => picker.current?.click()}>
        {children}
      </button>
      <input
        ref={picker}
        type="file"
        hidden
        accept={accept}
        aria-label={label}
        onChange={(event) => {
          const file = event.currentTarget.files?.[0];
          event.currentTarget.value = "";
          if (file) onFile(file);
        }}
      />
    </>
  );
}

import { useEffect, useRef } from "react";

/** Takes the first file that is dropped anywhere on the page. */
export function useDropped(onFile: (file: File) => void) {
  const take = useRef(onFile);
  take.current = onFile;
  useEffect(() => {
    const over = (event: DragEvent) => event.preventDefault();
    const drop = (event: DragEvent) => {
      event.preventDefault();
      const file = event.dataTransfer?.files[0];
      if (file) take.current(file);
    };
    window.addEventListener("dragover", over);
    window.addEventListener("drop", drop);
    return () => {
      window.removeEventListener("dragover", over);
      window.removeEventListener("drop", drop);
    };
  }, []);
}

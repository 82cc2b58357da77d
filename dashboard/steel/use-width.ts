import type { RefObject } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';

/** The width of an element in CSS pixels, followed; `start` until it stands on the page. */
export function useWidth<T extends HTMLElement>(start: number): { ref: RefObject<T | null>; width: number } {
  const ref = useRef<T>(null);
  const [width, setWidth] = useState(start);
  useEffect(() => {
    const element = ref.current;
    if (element === null) return;
    const observer = new ResizeObserver(() => setWidth(Math.max(200, Math.floor(element.clientWidth))));
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  return { ref, width };
}

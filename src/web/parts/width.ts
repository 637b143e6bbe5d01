import { type RefObject, useEffect, useRef, useState } from 'react';

/** How wide an element stands, in pixels; 0 before it is laid out. A picture drawn to it keeps its words readable. */
export function useWidth<T extends Element>(): [RefObject<T | null>, number] {
  const box = useRef<T>(null);
  const [width, setWidth] = useState(0);
  useEffect(() => {
    const element = box.current;
    if (!element) return;
    const watch = new ResizeObserver(() => setWidth(element.clientWidth));
    watch.observe(element);
    return () => watch.disconnect();
  }, []);
  return [box, width];
}

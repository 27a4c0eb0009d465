import type { ComponentChildren } from "preact";
import { useEffect, useRef, useState } from "preact/hooks";

/** What may be wider than the view. Where it scrolls, and only there, Tab stops at it, so that arrows can move it. */
export function Wide({ children }: { readonly children: ComponentChildren }) {
  const box = useRef<HTMLElement>(null);
  const [scrolls, setScrolls] = useState(false);
  const look = () => {
    const { current } = box;
    if (current) setScrolls(current.scrollWidth > current.clientWidth);
  };
  // What stands in it may have changed with any edit, its width with the window.
  useEffect(look);
  useEffect(() => {
    const observer = new ResizeObserver(look);
    if (box.current) observer.observe(box.current);
    return () => observer.disconnect();
  }, []);
  return (
    <section class="paper" ref={box} {...(scrolls ? { tabIndex: 0, "aria-label": "Table, scrolls sideways" } : {})}>
      {children}
    </section>
  );
}

import type { ComponentChildren } from "preact";
import { useEffect, useRef, useState } from "preact/hooks";

/** What may be wider than the view. Where it scrolls, and only there, Tab stops at it, so that arrows can move it. */
export function Wide({ children }: { readonly children: ComponentChildren }) {
  const box = useRef<HTMLElement>(null);
  const [scrolls, setScrolls] = useState(false);
  useEffect(() => {
    const { current } = box;
    if (!current) return;
    const look = () => setScrolls(current.scrollWidth > current.clientWidth);
    const observer = new ResizeObserver(look);
    observer.observe(current);
    look();
    return () => observer.disconnect();
  }, [children]);
  return (
    <section class="paper" ref={box} {...(scrolls ? { tabIndex: 0, "aria-label": "Table, scrolls sideways" } : {})}>
      {children}
    </section>
  );
}

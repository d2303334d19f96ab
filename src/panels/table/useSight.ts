/** Which lines of a long table are in sight: only these are drawn. */
import { type RefObject, useLayoutEffect, useState } from "react";

/** Lines drawn beyond the edges, so that a fast scroll shows no gap. */
const spare = 8;

export interface Sight {
  /** First and one past the last line to draw. */
  readonly first: number;
  readonly last: number;
  /** Lines that fit below the heading. */
  readonly fits: number;
  readonly show: (line: number) => void;
  readonly onScroll: (event: { readonly currentTarget: HTMLElement }) => void;
}

/** Lines in sight of the scrolling part round the table, each of this height in px. */
export function useSight(table: RefObject<HTMLTableElement | null>, lineHeight: number): Sight {
  const [top, setTop] = useState(0);
  const [height, setHeight] = useState(12 * lineHeight);
  useLayoutEffect(() => {
    const scroller = table.current?.parentElement;
    if (!scroller || typeof ResizeObserver === "undefined") return;
    const observer = new ResizeObserver(() => setHeight(scroller.clientHeight));
    observer.observe(scroller);
    return () => observer.disconnect();
  }, [table]);
  return {
    first: Math.max(0, Math.floor(top / lineHeight) - spare),
    last: Math.ceil((top + height) / lineHeight) + spare,
    fits: Math.floor(height / lineHeight) - 1,
    show: (line) => {
      const scroller = table.current?.parentElement;
      if (!scroller) return;
      scrollTo(scroller, line, lineHeight);
      // At once, not with the scroll event: the next key may come first and needs the cell.
      setTop(scroller.scrollTop);
    },
    onScroll: (event) => setTop(event.currentTarget.scrollTop),
  };
}

/** Brings a line into sight below the heading that stays. */
function scrollTo(scroller: HTMLElement, line: number, lineHeight: number): void {
  const top = line * lineHeight;
  const bottom = top + 2 * lineHeight;
  if (top < scroller.scrollTop) scroller.scrollTop = top;
  else if (bottom > scroller.scrollTop + scroller.clientHeight)
    scroller.scrollTop = bottom - scroller.clientHeight;
}

import { useEffect, useRef } from "react";
import { useStore } from "zustand";
import { appStore } from "../../store/store";
import { bookRequests, tookRequest } from "./bookRequest";

/**
 * Follows a request to type at a shot's reading. The cell is chosen at once, so that keys pressed as soon as a dialog gives the
 * keyboard back find it; and the keyboard is taken a moment later, unless the book `has` it by then.
 */
export function useBookRequest(onAsked: (shot: string | null) => void, has: () => boolean): void {
  const asked = useStore(bookRequests, (state) => state.asked);
  const latest = useRef({ onAsked, has });
  latest.current = { onAsked, has };
  useEffect(() => {
    if (!asked) return;
    const { tool } = appStore.getState();
    latest.current.onAsked(asked.shot);
    const timer = setTimeout(() => {
      tookRequest();
      // A tool that was taken meanwhile has the keyboard.
      if (appStore.getState().tool === tool && !latest.current.has()) latest.current.onAsked(asked.shot);
    }, 60);
    return () => clearTimeout(timer);
  }, [asked]);
}

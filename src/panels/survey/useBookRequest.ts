import { useEffect, useRef } from "react";
import { useStore } from "zustand";
import { appStore } from "../../store/store";
import { bookRequests, tookRequest } from "./bookRequest";

/** Follows a request to type at a shot's reading, once: after a dialog has given the focus back. */
export function useBookRequest(onAsked: (shot: string | null) => void): void {
  const asked = useStore(bookRequests, (state) => state.asked);
  const latest = useRef(onAsked);
  latest.current = onAsked;
  useEffect(() => {
    if (!asked) return;
    const { tool } = appStore.getState();
    const timer = setTimeout(() => {
      tookRequest();
      // A tool that was taken meanwhile has the keyboard.
      if (appStore.getState().tool === tool) latest.current(asked.shot);
    }, 60);
    return () => clearTimeout(timer);
  }, [asked]);
}

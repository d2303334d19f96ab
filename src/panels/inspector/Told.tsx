/** What a step tells of one thing: marked while the thing is selected. */
import type { ReactNode } from "react";
import { type Thing, thingKey } from "../../document";
import { useApp } from "../../store/useApp";
import "./told.css";

export function Told({ thing, children }: { thing: Thing; children: ReactNode }) {
  const key = thingKey(thing);
  const selected = useApp(
    ({ selection: [only, ...others] }) => only !== undefined && others.length === 0 && thingKey(only) === key,
  );
  return <div className={selected ? "told told-selected" : "told"}>{children}</div>;
}

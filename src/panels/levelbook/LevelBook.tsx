/** The level book: a table that is typed into like a spreadsheet. Only the rows in sight are drawn. */

import { useMemo, useRef } from "react";
import { pickTool } from "../../store/pickTool";
import { Action } from "../fields/Choice";
import { questionsOf } from "../survey/asked";
import { beginSetup } from "../survey/beginSetup";
import { bookRule } from "../survey/bookRule";
import { useNotation, useProject, useResults } from "../useProject";
import { BookTable } from "./BookTable";
import { FirstShots } from "./FirstShots";
import "./levelbook.css";

export function LevelBook() {
  const empty = useProject(({ survey }) => survey.shots.length === 0 && survey.setups.length === 0);
  // A book that was begun just now takes the keyboard, at the next shot's row; one that was opened doesn't.
  const wasEmpty = useRef(empty);
  return (
    <div className="book">
      <BookHead />
      {empty ? <FirstShots /> : <Book begun={wasEmpty.current} />}
    </div>
  );
}

function BookHead() {
  const rule = useProject(({ survey }) => bookRule(survey.setups));
  const unplaced = useProject(
    ({ survey }) =>
      survey.shots.filter((shot) => shot.place.kind === "none" && shot.kind === "ground" && !shot.aside)
        .length,
  );
  return (
    <div className="book-head">
      <h2 className="book-title">Level book</h2>
      <p className="book-rule">{rule}</p>
      <span className="head-gap" />
      {unplaced > 0 ? (
        <Action icon="place" look="quiet" onPress={() => pickTool("shot")}>
          {`Place ${unplaced} on the plan`}
        </Action>
      ) : null}
      <Action icon="plus" look="quiet" onPress={beginSetup}>
        Set-up
      </Action>
    </div>
  );
}

function Book({ begun }: { begun: boolean }) {
  const project = useProject((present) => present);
  const points = useResults(({ survey }) => survey.points);
  const setups = useResults(({ survey }) => survey.setups);
  const notation = useNotation();
  const byShot = useMemo(() => new Map(points.map((point) => [point.shot, point])), [points]);
  const problems = useResults((results) => results.problems);
  const questions = useMemo(() => questionsOf(project, problems, notation), [project, problems, notation]);
  return (
    <BookTable
      begun={begun}
      project={project}
      points={byShot}
      setups={setups}
      notation={notation}
      questions={questions}
    />
  );
}

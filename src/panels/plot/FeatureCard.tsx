/** A thing on the lot: what it is, where it stands, and how far the work keeps from it. */
import { type Feature, featureWords, isArea, type Point, siteEdits, usualKeepClear } from "../../document";
import { featureAdvice } from "../../solve/near-features";
import { goTo, run as runEdit, tryRun } from "../../store/actions";
import { Action, Choice, IconAction } from "../fields/Choice";
import { WordsField } from "../fields/fields";
import { LengthField } from "../fields/LengthField";
import { useNotation } from "../useProject";

const kindOptions = Object.entries(featureWords).map(([value, words]) => ({
  value: value as Feature["kind"],
  words,
}));

export function FeatureCard({ feature }: { feature: Feature }) {
  const { id, kind, name, points, keepClear, trunk } = feature;
  const change = (patch: Partial<Omit<Feature, "id">>) => tryRun(siteEdits.changeFeature, { id, patch });
  const [first, ...others] = points;
  const [x, y] = first ?? [0, 0];
  const move = (to: Point) => change({ points: [to, ...others] });
  return (
    <div className="card">
      <div className="card-head">
        <Choice
          layout="bare"
          label="Kind"
          value={kind}
          options={kindOptions}
          onChoose={(chosen) => change({ kind: chosen })}
        />
        <IconAction icon="place" label="Show it on the plan" onPress={() => goTo([x, y])} />
        <IconAction
          icon="trash"
          label={`Remove ${name || featureWords[kind]}`}
          onPress={() => runEdit(siteEdits.removeFeature, { id })}
        />
      </div>
      <WordsField label="Name" text={name} onCommit={(text) => change({ name: text })} />
      {others.length === 0 ? (
        <>
          <LengthField label="East" m={x} onCommit={(m) => move([m, y])} />
          <LengthField label="North" m={y} onCommit={(m) => move([x, m])} />
        </>
      ) : (
        <p className="soft small">
          {isArea(feature)
            ? `An area with ${points.length} corners.`
            : `A line through ${points.length} places.`}
        </p>
      )}
      {kind === "tree" || kind === "stump" ? (
        <LengthField
          label="Trunk's thickness"
          m={trunk}
          least={0}
          placeholder="not measured"
          onEmpty={() => change({ trunk: null })}
          onCommit={(m) => change({ trunk: m })}
        />
      ) : null}
      <LengthField label="Keep clear by" m={keepClear} least={0} onCommit={(m) => change({ keepClear: m })} />
      <UsualDistance feature={feature} onTake={(m) => change({ keepClear: m })} />
      {featureAdvice[kind] && isDanger(kind) ? <p className="danger small">{featureAdvice[kind]}</p> : null}
    </div>
  );
}

function isDanger(kind: Feature["kind"]): boolean {
  return kind === "buried-line" || kind === "overhead-line" || kind === "septic";
}

/** What the trade usually keeps, with whose rule it is; offered while another distance stands. */
function UsualDistance({ feature, onTake }: { feature: Feature; onTake: (m: number) => void }) {
  const notation = useNotation();
  const usual = usualKeepClear(feature);
  if (usual === null || Math.abs(usual.m - feature.keepClear) < 1e-9) return null;
  return (
    <div className="usual">
      <span className="soft small">{usual.source}</span>
      <Action look="quiet" onPress={() => onTake(usual.m)}>
        {`Take ${notation.length(usual.m)}`}
      </Action>
    </div>
  );
}

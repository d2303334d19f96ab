import { type Thumbnail, thumbnailShape } from "./thumbnail";

/** A demo's plan, drawn small. */
export function Stamp({ picture }: { picture: Thumbnail | null }) {
  if (!picture) return <span className="stamp" style={{ aspectRatio: thumbnailShape }} />;
  const { hair } = picture;
  return (
    <svg
      className="stamp"
      viewBox={picture.viewBox}
      style={{ aspectRatio: picture.shape }}
      aria-hidden="true"
    >
      {picture.depth?.map(({ ink, path }) => (
        <path key={ink} className="stamp-depth" d={path} style={{ fill: `var(--${ink})` }} />
      ))}
      <path className="stamp-minor" d={picture.minor} strokeWidth={hair * 0.7} />
      <path className="stamp-major" d={picture.major} strokeWidth={hair * 1.2} />
      <path
        className="stamp-lot"
        d={picture.lot}
        strokeWidth={hair * 1.4}
        strokeDasharray={`${hair * 12} ${hair * 4} ${hair * 2} ${hair * 4}`}
      />
      {picture.drives.map(({ path, width }) => (
        <g key={path}>
          <path className="stamp-drive-edge" d={path} strokeWidth={width + hair * 1.6} />
          <path className="stamp-drive" d={path} strokeWidth={width} />
        </g>
      ))}
      <path className="stamp-swale" d={picture.swales} strokeWidth={hair * 2.4} />
      <path className="stamp-building" d={picture.building} strokeWidth={hair * 3} />
    </svg>
  );
}

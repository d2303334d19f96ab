/**
 * The ground as a triangulated surface. Arrays in, arrays out; nothing here knows the project document.
 *
 * Units  metres. Axes x east, y north, z up.
 */

/** A triangulated irregular network. Corner order is counter-clockwise seen from above. */
export interface Tin {
  /** Coordinates of point i: x[i], y[i], z[i]. */
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly z: Float64Array;
  /** Point indices, three a triangle. */
  readonly triangles: Uint32Array;
  /** halfedges[e] is the twin of half-edge e (from corner e to the next corner of its triangle), -1 on the rim. */
  readonly halfedges: Int32Array;
  /** Point indices of the outer rim, counter-clockwise. */
  readonly hull: Uint32Array;
}

/**
 * The existing ground: the measured TIN with a skirt of guessed triangles round its hull, so that every
 * query in the working area has an answer, marked as a guess where it is one.
 */
export interface Ground {
  /** Measured points first, then the skirt's ghost points. */
  readonly tin: Tin;
  readonly measuredPoints: number;
  /** The triangles between the points come first, so many; then the skirt's. */
  readonly measuredTriangles: number;
  /** 1 for a triangle of the skirt, and for one between the points that is a guess all the same. */
  readonly guessed: Uint8Array;
  /** Hull of the measured points, counter-clockwise, flat x, y. */
  readonly hull: Float64Array;
  /** Least-squares plane of the measured points, z = a + gx x + gy y; the skirt continues with its slope. */
  readonly plane: { readonly a: number; readonly gx: number; readonly gy: number };
}

/** What the ground is at one place. Gradient components are rise over run towards east and north. */
export interface GroundAt {
  readonly z: number;
  readonly gx: number;
  readonly gy: number;
  readonly guessed: boolean;
}

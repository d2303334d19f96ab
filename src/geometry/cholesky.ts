/**
 * Symmetric positive definite equations, as least squares makes them.
 *
 * Form    Square matrices as flat rows.
 * Method  Cholesky factor L with L Lᵀ = matrix; source: any textbook of numerical linear algebra.
 * Errors  A pivot that isn't positive (an unknown that nothing fixes) counts as infinitely stiff: its unknown stays 0.
 */

/** The lower factor of a symmetric matrix. */
export function cholesky(matrix: Float64Array, n: number): Float64Array {
  const factor = new Float64Array(n * n);
  for (let j = 0; j < n; j++) {
    let pivot = matrix[j * n + j] ?? 0;
    const full = pivot;
    for (let k = 0; k < j; k++) pivot -= (factor[j * n + k] ?? 0) ** 2;
    const free = !(pivot > 1e-12 * full);
    const diagonal = free ? Number.POSITIVE_INFINITY : Math.sqrt(pivot);
    factor[j * n + j] = diagonal;
    for (let i = j + 1; i < n; i++) {
      let value = matrix[i * n + j] ?? 0;
      for (let k = 0; k < j; k++) value -= (factor[i * n + k] ?? 0) * (factor[j * n + k] ?? 0);
      factor[i * n + j] = value / diagonal;
    }
  }
  return factor;
}

/** Solves L Lᵀ x = right. */
export function substitute(factor: Float64Array, right: ArrayLike<number>, n: number): Float64Array {
  const x = Float64Array.from(right);
  for (let i = 0; i < n; i++) {
    let value = x[i] ?? 0;
    for (let k = 0; k < i; k++) value -= (factor[i * n + k] ?? 0) * (x[k] ?? 0);
    x[i] = value / (factor[i * n + i] ?? 1);
  }
  for (let i = n - 1; i >= 0; i--) {
    let value = x[i] ?? 0;
    for (let k = i + 1; k < n; k++) value -= (factor[k * n + i] ?? 0) * (x[k] ?? 0);
    x[i] = value / (factor[i * n + i] ?? 1);
  }
  return x;
}

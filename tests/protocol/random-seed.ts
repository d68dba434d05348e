/** A seed for a run that is not repeated: a whole number that is printed with what fails. */
export function randomSeed(): number {
  return Math.floor(Math.random() * 2 ** 30);
}

/** Characters of a token in an id: 10 of at least 16 kinds keep 40 bits of chance. */
const TOKEN_LENGTH = 10;

/** An id such as B20261125-7KQ2M9XD4R from a task's letter, an ISO date and a host's token. */
export function taskId(letter: string, today: string, token: string): string {
  return `${letter}${today.replaceAll('-', '')}-${token.slice(0, TOKEN_LENGTH).toUpperCase()}`;
}

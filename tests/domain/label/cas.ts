/** A CAS number whose last digit is the sum of its others by place from the right, modulo 10 (CAS Registry). */
export function isCas(number: string): boolean {
  if (!/^\d{2,7}-\d{2}-\d$/u.test(number)) return false;
  const digits = [...number.replace(/-/gu, '')].map(Number).reverse();
  const [check, ...others] = digits;
  return others.reduce((sum, digit, at) => sum + digit * (at + 1), 0) % 10 === check;
}

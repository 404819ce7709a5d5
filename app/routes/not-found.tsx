import { notFound } from '~/app/case.server';

export function loader(): never {
  throw notFound('There is no such page. Check the address, or start from the list of cases.');
}

export default function NotFound() {
  return null;
}

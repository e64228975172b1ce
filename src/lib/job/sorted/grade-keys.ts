/** A key of one sorter under one set of grades. An id of grades has no bar. */
export function handKey(gradesId: string, sorter: string): string {
  return `${gradesId}|${sorter}`;
}

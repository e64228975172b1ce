/** A band of thickness, said wherever a pile's meaning is. */
export const band = {
  over: (mm: string) => `${mm} mm and over`,
  under: (mm: string) => `under ${mm} mm`,
  between: (low: string, high: string) => `${low} to ${high} mm`
};

/** A share of 0–1 in whole per cent: "62 %". */
export const percent = (share: number): string => `${Math.round(share * 100)} %`;

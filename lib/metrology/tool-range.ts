import type { TorqueTool } from '../shop';

/** Below a fifth of its largest value a tool is not trusted, unless its own scale begins lower (common practice). */
const USUAL_LOWEST_SHARE = 0.2;

/** Where a torque tool may be used, N·m: from the lowest value of its own data, else from 20 %, up to its largest. */
export const usableRange = (
  tool: TorqueTool,
): { readonly lowerNm: number; readonly upperNm: number } => ({
  lowerNm: tool.lowerNm > 0 ? tool.lowerNm : tool.upperNm * USUAL_LOWEST_SHARE,
  upperNm: tool.upperNm,
});

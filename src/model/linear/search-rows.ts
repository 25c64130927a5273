import type { Search } from './search.js';

// Each of these does all that is to be done with a row at once: a program is solved but once, and
// most of its time goes by before the loops are compiled, the sooner the fewer there are.

/** Goes so much of a step by the slacks and prices, and measures the rows where that leads. */
export function moveRows(search: Search, primal: number, dual: number): void {
  const { rows, x, slack, price, slackStep, priceStep, inverse, weight, short, unpriced } = search;
  const { least, starts, columns, values } = rows;
  let product = 0;
  let most = 0;
  let at = 0;
  for (let row = 0; row < slack.length; row++) {
    const s = slack[row]! + primal * slackStep[row]!;
    const z = price[row]! + dual * priceStep[row]!;
    let off = least[row]! + s;
    const end = starts[row + 1]!;
    for (; at < end; at++) {
      const column = columns[at]!;
      off -= values[at]! * x[column]!;
      unpriced[column]! -= values[at]! * z;
    }
    slack[row] = s;
    price[row] = z;
    inverse[row] = 1 / s;
    weight[row] = z / s;
    short[row] = off;
    product += s * z;
    most = Math.max(most, Math.abs(off));
  }
  search.product = product;
  search.mostShort = most;
}

/**
 * Sets what is wanted of the rows, and adds what they pull at x to −unpriced: of s·δz + z·δs = q − s·z,
 * δs = G·δx − short and Gᵀ·δz = unpriced it follows, W being z/s, that
 * Gᵀ·W·G·δx = Gᵀ·(q/s − z + W·short) − unpriced.
 */
export function aimRows(search: Search, wanted: number, bend: 0 | 1): void {
  const { rows, price, xStep, slackStep, priceStep, inverse, weight, short, aim } = search;
  const { starts, columns, values } = rows;
  let at = 0;
  for (let row = 0; row < aim.length; row++) {
    const aimed = (wanted - bend * slackStep[row]! * priceStep[row]!) * inverse[row]!;
    const pull = aimed - price[row]! + weight[row]! * short[row]!;
    const end = starts[row + 1]!;
    for (; at < end; at++) {
      xStep[columns[at]!]! += pull * values[at]!;
    }
    aim[row] = aimed;
  }
}

/** The steps of slacks and prices that go with that of x, and how far they can be gone. */
export function stepRows(search: Search): void {
  const { rows, xStep, price, slackStep, priceStep, inverse, weight, short, aim } = search;
  const { starts, columns, values } = rows;
  let slackFall = 0;
  let priceFall = 0;
  let slackGain = 0;
  let bothGain = 0;
  let at = 0;
  for (let row = 0; row < price.length; row++) {
    let way = -short[row]!;
    const end = starts[row + 1]!;
    for (; at < end; at++) {
      way += values[at]! * xStep[columns[at]!]!;
    }
    const z = price[row]!;
    const priceWay = aim[row]! - z - weight[row]! * way;
    slackStep[row] = way;
    priceStep[row] = priceWay;
    slackFall = Math.max(slackFall, -way * inverse[row]!);
    priceFall = Math.max(priceFall, -priceWay / z);
    slackGain += way * z;
    bothGain += way * priceWay;
  }
  search.slackFall = slackFall;
  search.priceFall = priceFall;
  search.slackGain = slackGain;
  search.bothGain = bothGain;
}

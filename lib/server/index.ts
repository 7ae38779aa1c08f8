export { answer, problem } from './problem';
export { route, type Endpoint } from './route';
export { getShopServer, shopServer, type ShopServer } from './shop-server';
export { foremanIn, sessionIn, signedOn, signedOnToRead, signedOnToWrite } from './signed-on';

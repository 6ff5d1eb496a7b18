import { defineMiddleware } from 'astro:middleware';
import { channel } from 'node:diagnostics_channel';
import { pageChannel } from './site/page-channel.ts';

const pages = channel(pageChannel);

/** Tells the command that builds the site which page is being made. */
export const onRequest = defineMiddleware(({ url }, next) => {
  pages.publish(decodeURI(url.pathname));
  return next();
});

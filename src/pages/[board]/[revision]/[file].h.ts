import { fileRoute } from '../../../site/file-route.ts';

export const { getStaticPaths, GET } = fileRoute('.h');

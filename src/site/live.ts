/**
 * Whether pages are served while their spec is edited. Not by `import.meta.env.PROD`, which believes NODE_ENV: a built page
 * must have its policy against scripts whatever the environment says.
 */
export const live: boolean = import.meta.env.MODE === 'development';

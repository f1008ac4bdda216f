# Pierhand for Discord and Matrix. Built and run by deploy/compose.yaml: see deploy/README.md
# An exact release, so that building again changes nothing unasked.
ARG NODE_VERSION=22.21.1

FROM node:${NODE_VERSION}-bookworm AS build
WORKDIR /app
COPY package.json package-lock.json ./
RUN npm ci --ignore-scripts && npm rebuild esbuild
COPY build.mjs tsconfig.json ./
COPY bot ./bot
COPY scripts/knowledge ./scripts/knowledge
COPY knowledge/connection ./knowledge/connection
# Told by --version, the log and /health: --build-arg SOURCE_COMMIT=$(git rev-parse HEAD)
ARG SOURCE_COMMIT=
RUN npm run build && npm prune --omit=dev --ignore-scripts
# "yes": for encrypted Matrix rooms (fetches the SDK's native library from its maker).
ARG MATRIX_ENCRYPTION=no
COPY scripts/matrix ./scripts/matrix
RUN if [ "$MATRIX_ENCRYPTION" = yes ]; then node scripts/matrix/add-encryption.mjs; fi
COPY scripts/container ./scripts/container
RUN node scripts/container/slim-modules.mjs

FROM node:${NODE_VERSION}-bookworm-slim
LABEL org.opencontainers.image.title="Pierhand" org.opencontainers.image.licenses="MIT"
WORKDIR /app
# Memory outside the heap goes back to the system as pictures are done: some 40 MB less resident in a crowd.
ENV MALLOC_ARENA_MAX=1 MALLOC_MMAP_THRESHOLD_=131072
ENV NODE_ENV=production PIERHAND_DATA=/data PIERHAND_HTTP_PORT=9464 PIERHAND_HTTP_HOST=127.0.0.1
RUN mkdir /data && chown node:node /data
COPY --from=build /app/package.json ./
COPY --from=build /app/node_modules ./node_modules
COPY --from=build /app/dist ./dist
COPY bot/reply/fonts ./bot/reply/fonts
COPY bot/platforms/browser/page ./bot/platforms/browser/page
COPY knowledge ./knowledge
COPY LICENSE ./
USER node
VOLUME /data
HEALTHCHECK --interval=30s --timeout=5s --start-period=60s --retries=3 \
  CMD ["node", "-e", "fetch(`http://127.0.0.1:${process.env.PIERHAND_HTTP_PORT}/health`).then(r=>process.exit(r.ok?0:1),()=>process.exit(1))"]
STOPSIGNAL SIGTERM
CMD ["node", "--max-semi-space-size=8", "dist/bot/main.js"]

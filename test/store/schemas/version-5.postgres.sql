-- The PostgreSQL database of schema version 5: version 4's with the column that the fifth step adds, and the same rows.
CREATE TABLE public.events (
    key text NOT NULL,
    claimed_utc_ms bigint NOT NULL,
    answered integer NOT NULL
);
CREATE TABLE public.gear (
    member_id text NOT NULL,
    mount text,
    connection text,
    system text,
    primary_deg_per_s double precision,
    secondary_deg_per_s double precision,
    east_limit_deg double precision,
    west_limit_deg double precision
);
CREATE TABLE public.notes (
    key text NOT NULL,
    value text NOT NULL
);
CREATE TABLE public.outcome_marks (
    member_id text NOT NULL,
    club_id text NOT NULL,
    fault_id text NOT NULL,
    month text NOT NULL
);
CREATE TABLE public.outcomes (
    club_id text NOT NULL,
    fault_id text NOT NULL,
    times integer NOT NULL
);
CREATE TABLE public.reminders (
    id text NOT NULL,
    member_id text NOT NULL,
    club_id text NOT NULL,
    platform text NOT NULL,
    channel_id text NOT NULL,
    said_to text NOT NULL,
    kind text NOT NULL,
    due_utc_ms bigint NOT NULL,
    stale_utc_ms bigint,
    repeat text,
    text text NOT NULL,
    claimant text,
    lease_utc_ms bigint,
    attempts integer DEFAULT 0 NOT NULL,
    not_before_utc_ms bigint
);
CREATE TABLE public.schema_version (
    version integer NOT NULL
);
CREATE TABLE public.sites (
    owner_kind text NOT NULL,
    owner_id text NOT NULL,
    name_key text NOT NULL,
    name text NOT NULL,
    latitude_deg double precision NOT NULL,
    longitude_deg double precision NOT NULL,
    elevation_m double precision NOT NULL,
    zone text NOT NULL,
    horizon text,
    is_default integer NOT NULL,
    sky text
);
CREATE TABLE public.walks (
    id text NOT NULL,
    club_id text NOT NULL,
    member_id text NOT NULL,
    helper_id text,
    platform text NOT NULL,
    channel_id text NOT NULL,
    state text NOT NULL,
    updated_utc_ms bigint NOT NULL,
    ended_utc_ms bigint,
    awaits_member integer DEFAULT 0 NOT NULL,
    asked_helper_id text
);
INSERT INTO public.events VALUES ('discord:1', 1764000000000, 1);
INSERT INTO public.events VALUES ('discord:2', 1764000000001, 0);
INSERT INTO public.gear VALUES ('matrix:@tamsin:fenwold.example', 'german', 'hand-serial', 'linux', NULL, NULL, NULL, NULL);
INSERT INTO public.notes VALUES ('matrix:sync', 's1');
INSERT INTO public.outcome_marks VALUES ('matrix:@tamsin:fenwold.example', 'discord:900000000000000001', 'cable', '2026-11');
INSERT INTO public.outcomes VALUES ('discord:900000000000000001', 'cable', 2);
INSERT INTO public.reminders VALUES ('ckxzg3m', 'matrix:@tamsin:fenwold.example', 'discord:900000000000000001', 'matrix', '!r:fenwold.example', 'member', 'altitude', 1764100000000, 1764103600000, NULL, 'NGC 7331 is 30° high.', NULL, NULL, 0, NULL);
INSERT INTO public.reminders VALUES ('p2ttf57', 'discord:200000000000000002', 'discord:900000000000000001', 'discord', 'c1', 'channel', 'sunrise', 1764110000000, NULL, '{"nights":"all"}', 'Cap and park.', 'p1', 1764110060001, 0, NULL);
INSERT INTO public.schema_version VALUES (5);
INSERT INTO public.sites VALUES ('member', 'matrix:@tamsin:fenwold.example', 'quarry field', 'Quarry Field', 52.7, 0.12, 31.5, 'Europe/London', '[{"azimuthDeg":90,"altitudeDeg":20.5},{"azimuthDeg":120,"altitudeDeg":-1}]', 1, NULL);
INSERT INTO public.sites VALUES ('member', 'matrix:@tamsin:fenwold.example', 'cold ridge', 'Cold Ridge', -33.2, 151.2, 0, 'Australia/Sydney', NULL, 0, NULL);
INSERT INTO public.sites VALUES ('club', 'discord:900000000000000001', 'fenwold common', 'Fenwold Common', 52.71, 0.12, 3, 'Europe/London', NULL, 1, NULL);
INSERT INTO public.walks VALUES ('w1', 'discord:900000000000000001', 'discord:200000000000000002', 'matrix:@tamsin:fenwold.example', 'discord', 'c1', '{"step":"ask","answers":[1,null,"no"]}', 1764000000000, NULL, 0, NULL);
ALTER TABLE ONLY public.events
    ADD CONSTRAINT events_pkey PRIMARY KEY (key);
ALTER TABLE ONLY public.gear
    ADD CONSTRAINT gear_pkey PRIMARY KEY (member_id);
ALTER TABLE ONLY public.notes
    ADD CONSTRAINT notes_pkey PRIMARY KEY (key);
ALTER TABLE ONLY public.outcome_marks
    ADD CONSTRAINT outcome_marks_key PRIMARY KEY (member_id, club_id, fault_id, month);
ALTER TABLE ONLY public.outcomes
    ADD CONSTRAINT outcomes_key PRIMARY KEY (club_id, fault_id);
ALTER TABLE ONLY public.reminders
    ADD CONSTRAINT reminders_pkey PRIMARY KEY (id);
ALTER TABLE ONLY public.sites
    ADD CONSTRAINT sites_key PRIMARY KEY (owner_kind, owner_id, name_key);
ALTER TABLE ONLY public.walks
    ADD CONSTRAINT walks_pkey PRIMARY KEY (id);
CREATE INDEX events_by_age ON public.events USING btree (claimed_utc_ms);
CREATE INDEX reminders_by_due ON public.reminders USING btree (due_utc_ms);
CREATE INDEX reminders_by_member ON public.reminders USING btree (member_id);
CREATE UNIQUE INDEX sites_one_default ON public.sites USING btree (owner_kind, owner_id) WHERE (is_default = 1);
CREATE INDEX walks_by_age ON public.walks USING btree (updated_utc_ms);
CREATE INDEX walks_by_helper ON public.walks USING btree (helper_id, club_id);
CREATE INDEX walks_by_member ON public.walks USING btree (member_id, club_id);

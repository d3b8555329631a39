-- Who may see and write which row. The web process connects as app_user, which owns nothing; each transaction names the
-- account in app.account_id, and memberships are read from there. A row that no policy admits does not exist.

CREATE FUNCTION app_account() RETURNS uuid LANGUAGE sql STABLE PARALLEL SAFE
  RETURN nullif(current_setting('app.account_id', true), '')::uuid;

-- Clubs in which the account is a coach today, in one of the given roles.
CREATE FUNCTION app_coach_club_ids(roles text[]) RETURNS uuid[] LANGUAGE sql STABLE SECURITY DEFINER SET search_path = public, pg_temp
BEGIN ATOMIC
  SELECT coalesce(array_agg(DISTINCT m."clubId"), '{}') FROM "Membership" m
  WHERE m."accountId" = app_account() AND m."clubId" IS NOT NULL AND m."role" = ANY (roles)
    AND m."from" <= now() AND (m."to" IS NULL OR m."to" > now());
END;

-- Programmes in which the account has any role today.
CREATE FUNCTION app_programme_ids() RETURNS uuid[] LANGUAGE sql STABLE SECURITY DEFINER SET search_path = public, pg_temp
BEGIN ATOMIC
  SELECT coalesce(array_agg(DISTINCT m."programmeId"), '{}') FROM "Membership" m
  WHERE m."accountId" = app_account() AND m."from" <= now() AND (m."to" IS NULL OR m."to" > now());
END;

-- Programmes that the account reviews or leads today.
CREATE FUNCTION app_reviewed_programme_ids() RETURNS uuid[] LANGUAGE sql STABLE SECURITY DEFINER SET search_path = public, pg_temp
BEGIN ATOMIC
  SELECT coalesce(array_agg(DISTINCT m."programmeId"), '{}') FROM "Membership" m
  WHERE m."accountId" = app_account() AND m."clubId" IS NULL AND m."from" <= now() AND (m."to" IS NULL OR m."to" > now());
END;

-- Clubs whose rows the account sees: her own, and those of a programme she reviews or leads.
CREATE FUNCTION app_club_ids() RETURNS uuid[] LANGUAGE sql STABLE SECURITY DEFINER SET search_path = public, pg_temp
BEGIN ATOMIC
  SELECT app_coach_club_ids(ARRAY['assistant', 'head']) ||
    coalesce((SELECT array_agg(c."id") FROM "Club" c WHERE c."programmeId" = ANY (app_reviewed_programme_ids())), '{}');
END;

-- Divers who belong to the given clubs today: a row about a diver follows the diver, not the club at writing.
CREATE FUNCTION divers_of(clubs uuid[]) RETURNS uuid[] LANGUAGE sql STABLE SECURITY DEFINER SET search_path = public, pg_temp
BEGIN ATOMIC
  SELECT coalesce(array_agg(m."diverId"), '{}') FROM "DiverMembership" m
  WHERE m."clubId" = ANY (clubs) AND m."from" <= now() AND (m."to" IS NULL OR m."to" > now());
END;

CREATE FUNCTION app_diver_ids() RETURNS uuid[] LANGUAGE sql STABLE SECURITY DEFINER SET search_path = public, pg_temp
  RETURN divers_of(app_club_ids());
CREATE FUNCTION app_coach_diver_ids() RETURNS uuid[] LANGUAGE sql STABLE SECURITY DEFINER SET search_path = public, pg_temp
  RETURN divers_of(app_coach_club_ids(ARRAY['assistant', 'head']));
CREATE FUNCTION app_head_diver_ids() RETURNS uuid[] LANGUAGE sql STABLE SECURITY DEFINER SET search_path = public, pg_temp
  RETURN divers_of(app_coach_club_ids(ARRAY['head']));

-- Accounts with any role, now or earlier, in the account's programmes: whose names may stand beside what they wrote.
CREATE FUNCTION app_colleague_ids() RETURNS uuid[] LANGUAGE sql STABLE SECURITY DEFINER SET search_path = public, pg_temp
BEGIN ATOMIC
  SELECT coalesce(array_agg(DISTINCT m."accountId"), '{}') FROM "Membership" m WHERE m."programmeId" = ANY (app_programme_ids());
END;

-- ── Before there is an account ──
CREATE FUNCTION sign_in_lookup(address text) RETURNS TABLE ("id" uuid, "passwordHash" text) LANGUAGE sql STABLE SECURITY DEFINER SET search_path = public, pg_temp
BEGIN ATOMIC
  SELECT a."id", a."passwordHash" FROM "Account" a WHERE a."email" = lower(address) AND a."disabledAt" IS NULL;
END;

CREATE FUNCTION open_session(session uuid, account uuid, until timestamptz) RETURNS void LANGUAGE sql VOLATILE SECURITY DEFINER SET search_path = public, pg_temp
BEGIN ATOMIC
  INSERT INTO "Session" ("id", "accountId", "createdAt", "expiresAt") VALUES (session, account, now(), until);
END;

CREATE FUNCTION session_account(session uuid) RETURNS uuid LANGUAGE sql STABLE SECURITY DEFINER SET search_path = public, pg_temp
BEGIN ATOMIC
  SELECT s."accountId" FROM "Session" s JOIN "Account" a ON a."id" = s."accountId"
  WHERE s."id" = session AND s."endedAt" IS NULL AND s."expiresAt" > now() AND a."disabledAt" IS NULL;
END;

CREATE FUNCTION end_session(session uuid) RETURNS void LANGUAGE sql VOLATILE SECURITY DEFINER SET search_path = public, pg_temp
BEGIN ATOMIC
  UPDATE "Session" SET "endedAt" = now() WHERE "id" = session AND "endedAt" IS NULL;
END;

-- The demo's sign-ins, only while the programme is marked as the demo.
CREATE FUNCTION demo_sign_ins() RETURNS TABLE ("email" text, "name" text, "roles" text) LANGUAGE sql STABLE SECURITY DEFINER SET search_path = public, pg_temp
BEGIN ATOMIC
  SELECT a."email", a."name", string_agg(m."role" || coalesce(' · ' || c."name", ''), ', ' ORDER BY c."name", m."role")
  FROM "Account" a JOIN "Membership" m ON m."accountId" = a."id" JOIN "Programme" p ON p."id" = m."programmeId"
  LEFT JOIN "Club" c ON c."id" = m."clubId"
  WHERE p."isDemo" AND m."to" IS NULL AND a."disabledAt" IS NULL
  GROUP BY a."id" ORDER BY a."createdAt", a."email";
END;

-- An edition that exists as a draft only: the deck is told so rather than "unknown".
CREATE FUNCTION is_draft(edition text) RETURNS boolean LANGUAGE sql STABLE SECURITY DEFINER SET search_path = public, pg_temp
BEGIN ATOMIC
  SELECT EXISTS (SELECT FROM "Draft" d WHERE d."hash" = edition AND d."programmeId" = ANY (app_programme_ids()));
END;

-- The one way into the ledger: takes the next number under the head's lock, so that the sequence has no gap.
CREATE FUNCTION append_ledger(programme uuid, kind text, version integer, payload text, at timestamptz) RETURNS bigint
LANGUAGE plpgsql VOLATILE SECURITY DEFINER SET search_path = public, pg_temp AS $$
DECLARE entry bigint;
BEGIN
  IF NOT programme = ANY (app_programme_ids()) THEN
    RAISE EXCEPTION 'no role in this programme' USING ERRCODE = 'insufficient_privilege';
  END IF;
  INSERT INTO "LedgerHead" ("programmeId", "seq") VALUES (programme, 0) ON CONFLICT DO NOTHING;
  UPDATE "LedgerHead" SET "seq" = "seq" + 1 WHERE "programmeId" = programme RETURNING "seq" INTO entry;
  INSERT INTO "Ledger" ("programmeId", "seq", "kind", "schemaVersion", "payload", "hash", "at")
  VALUES (programme, entry, append_ledger.kind, version, append_ledger.payload,
          encode(sha256(convert_to(append_ledger.payload, 'UTF8')), 'hex'), append_ledger.at);
  RETURN entry;
END $$;

REVOKE EXECUTE ON ALL FUNCTIONS IN SCHEMA public FROM PUBLIC;
GRANT USAGE ON SCHEMA public TO app_user;
GRANT EXECUTE ON FUNCTION app_account, app_coach_club_ids, app_programme_ids, app_reviewed_programme_ids, app_club_ids,
  app_diver_ids, app_coach_diver_ids, app_head_diver_ids, app_colleague_ids, sign_in_lookup, open_session, session_account,
  end_session, demo_sign_ins, is_draft, append_ledger TO app_user;

-- ── Grants: nothing by default; never on a partition, which its parent's policies would not protect ──
GRANT SELECT ON "Programme", "Club", "VenueFlag", "Membership", "CoachScope", "Diver", "DiverWords", "DiverMembership",
  "Squad", "SquadDiver", "Edition", "Call", "Attempt", "Observation", "ObservationHead", "Words", "Moment", "SignOff", "Revocation",
  "Recognition", "Decision", "Incident", "Release", "StandDown", "Ledger", "Readiness" TO app_user;
GRANT SELECT ("id", "name", "initials") ON "Account" TO app_user;
-- A row lock needs the right to update something; these two are the head coach's to keep.
GRANT UPDATE ("twistingSide", "hurdleLeg") ON "Diver" TO app_user;
GRANT INSERT ON "Edition", "Call", "Attempt", "Observation", "Words", "Moment", "SignOff", "Revocation", "Recognition", "Decision",
  "Incident", "Release", "StandDown" TO app_user;
GRANT INSERT, UPDATE, DELETE ON "Readiness", "SignInRate" TO app_user;
GRANT SELECT ON "SignInRate" TO app_user;

-- ── Policies ──
DO $$
DECLARE t text;
BEGIN
  FOREACH t IN ARRAY ARRAY['Programme', 'Club', 'VenueFlag', 'Account', 'Session', 'Membership', 'CoachScope', 'Diver', 'DiverWords',
    'DiverMembership', 'Squad', 'SquadDiver', 'Edition', 'Draft', 'Call', 'Attempt', 'Observation', 'ObservationHead', 'Words', 'Moment',
    'SignOff', 'Revocation', 'Recognition', 'Decision', 'Incident', 'Release', 'StandDown', 'Ledger', 'LedgerHead', 'Readiness'] LOOP
    EXECUTE format('ALTER TABLE %I ENABLE ROW LEVEL SECURITY', t);
  END LOOP;
END $$;

-- Of the programme or of a club.
CREATE POLICY seen ON "Programme" FOR SELECT TO app_user USING ("id" = ANY ((SELECT app_programme_ids())::uuid[]));
CREATE POLICY seen ON "Club" FOR SELECT TO app_user USING ("programmeId" = ANY ((SELECT app_programme_ids())::uuid[]));
CREATE POLICY seen ON "Account" FOR SELECT TO app_user USING ("id" = ANY ((SELECT app_colleague_ids())::uuid[]));
CREATE POLICY seen ON "VenueFlag" FOR SELECT TO app_user USING ("clubId" = ANY ((SELECT app_club_ids())::uuid[]));
CREATE POLICY seen ON "Membership" FOR SELECT TO app_user
  USING ("accountId" = (SELECT app_account()) OR "clubId" = ANY ((SELECT app_club_ids())::uuid[]));
CREATE POLICY seen ON "CoachScope" FOR SELECT TO app_user USING ("clubId" = ANY ((SELECT app_club_ids())::uuid[]));
CREATE POLICY seen ON "Squad" FOR SELECT TO app_user USING ("clubId" = ANY ((SELECT app_club_ids())::uuid[]));
CREATE POLICY seen ON "SquadDiver" FOR SELECT TO app_user USING (EXISTS (SELECT FROM "Squad" s WHERE s."id" = "squadId"));
CREATE POLICY seen ON "Edition" FOR SELECT TO app_user USING ("programmeId" = ANY ((SELECT app_programme_ids())::uuid[]));
CREATE POLICY published ON "Edition" FOR INSERT TO app_user WITH CHECK (
  "publishedBy" = (SELECT app_account()) AND EXISTS (
    SELECT FROM "Membership" m WHERE m."accountId" = (SELECT app_account()) AND m."programmeId" = "Edition"."programmeId"
      AND m."role" = 'lead' AND m."from" <= now() AND (m."to" IS NULL OR m."to" > now())));
CREATE POLICY seen ON "Ledger" FOR SELECT TO app_user USING ("programmeId" = ANY ((SELECT app_reviewed_programme_ids())::uuid[]));

-- About a diver: by membership in the diver's current club, or a programme role.
CREATE POLICY seen ON "Diver" FOR SELECT TO app_user USING ("id" = ANY ((SELECT app_diver_ids())::uuid[]));
CREATE POLICY kept ON "Diver" FOR UPDATE TO app_user USING ("id" = ANY ((SELECT app_coach_diver_ids())::uuid[]));
CREATE POLICY seen ON "DiverWords" FOR SELECT TO app_user USING ("diverId" = ANY ((SELECT app_diver_ids())::uuid[]));
CREATE POLICY seen ON "DiverMembership" FOR SELECT TO app_user USING ("diverId" = ANY ((SELECT app_diver_ids())::uuid[]));
CREATE POLICY seen ON "Moment" FOR SELECT TO app_user USING ("diverId" = ANY ((SELECT app_diver_ids())::uuid[]));
CREATE POLICY kept ON "Moment" FOR INSERT TO app_user WITH CHECK ("diverId" = ANY ((SELECT app_coach_diver_ids())::uuid[]));
CREATE POLICY seen ON "ObservationHead" FOR SELECT TO app_user USING (
  "coachId" = (SELECT app_account()) OR EXISTS (
    SELECT FROM "Attempt" a WHERE a."clubId" = "ObservationHead"."clubId" AND a."id" = "attemptId"));
CREATE POLICY kept ON "Readiness" TO app_user USING ("diverId" = ANY ((SELECT app_diver_ids())::uuid[]));

-- Written by a coach about her club's diver; she keeps sight of what she wrote after the diver has moved on.
DO $$
DECLARE t record;
BEGIN
  FOR t IN SELECT * FROM (VALUES
    ('Call', 'coachId', 'app_coach_diver_ids'), ('Attempt', 'coachId', 'app_coach_diver_ids'),
    ('Observation', 'coachId', 'app_coach_diver_ids'), ('Words', 'writtenBy', 'app_coach_diver_ids'),
    ('SignOff', 'coachId', 'app_coach_diver_ids'), ('Incident', 'by', 'app_coach_diver_ids'),
    ('Revocation', 'by', 'app_head_diver_ids'), ('Recognition', 'by', 'app_head_diver_ids'),
    ('Decision', 'by', 'app_head_diver_ids'), ('Release', 'by', 'app_head_diver_ids'),
    ('StandDown', 'by', 'app_head_diver_ids')) AS rows (name, writer, divers) LOOP
    EXECUTE format('CREATE POLICY seen ON %I FOR SELECT TO app_user USING ("diverId" = ANY ((SELECT app_diver_ids())::uuid[]) OR %I = (SELECT app_account()))', t.name, t.writer);
    EXECUTE format('CREATE POLICY written ON %I FOR INSERT TO app_user WITH CHECK ("diverId" = ANY ((SELECT %s())::uuid[]) AND %I = (SELECT app_account()))', t.name, t.divers, t.writer);
  END LOOP;
END $$;

-- People: invitations, transfers, and what a programme lead and a head coach may keep of clubs, coaches, squads and divers.

-- CreateTable
CREATE TABLE "Invitation" (
    "id" UUID NOT NULL,
    "programmeId" UUID NOT NULL,
    "clubId" UUID,
    "role" TEXT NOT NULL,
    "tokenHash" TEXT NOT NULL,
    "label" TEXT NOT NULL,
    "invitedBy" UUID NOT NULL,
    "createdAt" TIMESTAMPTZ(3) NOT NULL,
    "expiresAt" TIMESTAMPTZ(3) NOT NULL,
    "withdrawnAt" TIMESTAMPTZ(3),
    "acceptedAt" TIMESTAMPTZ(3),
    "acceptedBy" UUID,

    CONSTRAINT "Invitation_pkey" PRIMARY KEY ("id"),
    CONSTRAINT "Invitation_role" CHECK (("clubId" IS NULL AND "role" IN ('reviewer', 'lead')) OR ("clubId" IS NOT NULL AND "role" IN ('assistant', 'head')))
);

-- CreateTable
CREATE TABLE "Transfer" (
    "id" UUID NOT NULL,
    "fromClubId" UUID NOT NULL,
    "toClubId" UUID NOT NULL,
    "diverId" UUID,
    "name" TEXT,
    "bornOn" DATE,
    "proposedFor" UUID NOT NULL,
    "proposedBy" UUID NOT NULL,
    "proposedAt" TIMESTAMPTZ(3) NOT NULL,
    "agreedBy" UUID,
    "agreedAt" TIMESTAMPTZ(3),
    "endedBy" UUID,
    "endedAt" TIMESTAMPTZ(3),

    CONSTRAINT "Transfer_pkey" PRIMARY KEY ("id"),
    CONSTRAINT "Transfer_sides" CHECK ("fromClubId" <> "toClubId" AND "proposedFor" IN ("fromClubId", "toClubId"))
);

-- CreateIndex
CREATE UNIQUE INDEX "Invitation_tokenHash_key" ON "Invitation"("tokenHash");

-- CreateIndex
CREATE INDEX "Invitation_clubId_idx" ON "Invitation"("clubId");

-- CreateIndex
CREATE INDEX "Transfer_fromClubId_idx" ON "Transfer"("fromClubId");

-- CreateIndex
CREATE INDEX "Transfer_toClubId_idx" ON "Transfer"("toClubId");

-- One way at a time for a diver.
CREATE UNIQUE INDEX "Transfer_open_diver" ON "Transfer"("diverId") WHERE "agreedAt" IS NULL AND "endedAt" IS NULL;

-- Programmes that the account leads today.
CREATE FUNCTION app_led_programme_ids() RETURNS uuid[] LANGUAGE sql STABLE SECURITY DEFINER SET search_path = public, pg_temp
BEGIN ATOMIC
  SELECT coalesce(array_agg(DISTINCT m."programmeId"), '{}') FROM "Membership" m
  WHERE m."accountId" = app_account() AND m."role" = 'lead' AND m."from" <= now() AND (m."to" IS NULL OR m."to" > now());
END;

-- Divers of no club today whose last club the account heads: she may name them to the club that they go to, or take them back.
CREATE FUNCTION app_former_diver_ids() RETURNS uuid[] LANGUAGE sql STABLE SECURITY DEFINER SET search_path = public, pg_temp
BEGIN ATOMIC
  SELECT coalesce(array_agg(l."diverId"), '{}')
  FROM (SELECT DISTINCT ON (m."diverId") m.* FROM "DiverMembership" m ORDER BY m."diverId", m."from" DESC, m."to" DESC NULLS FIRST) l
  WHERE l."to" <= now() AND l."clubId" = ANY (app_coach_club_ids(ARRAY['head']));
END;

-- ── Invitations ──
-- What the link itself says, to whoever holds it, signed in or not.
CREATE FUNCTION invitation_of(hash text) RETURNS TABLE ("id" uuid, "role" text, "inviter" text, "clubId" uuid, "clubName" text,
  "programmeId" uuid, "programmeName" text, "zone" text, "isDemo" boolean, "clockOffsetMs" bigint,
  "expiresAt" timestamptz, "withdrawnAt" timestamptz, "acceptedAt" timestamptz)
LANGUAGE sql STABLE SECURITY DEFINER SET search_path = public, pg_temp
BEGIN ATOMIC
  SELECT i."id", i."role", coalesce(a."name", p."name"), c."id", c."name", p."id", p."name", p."zone", p."isDemo", p."clockOffsetMs",
    i."expiresAt", i."withdrawnAt", i."acceptedAt"
  FROM "Invitation" i JOIN "Programme" p ON p."id" = i."programmeId"
  LEFT JOIN "Club" c ON c."id" = i."clubId" LEFT JOIN "Account" a ON a."id" = i."invitedBy"
  WHERE i."tokenHash" = hash;
END;

-- Uses an open invitation up: makes the account where its words are given, ends another post in the same club, gives the new one.
CREATE FUNCTION accept_invitation(hash text, email text, name text, initials text, password_hash text, at timestamptz)
RETURNS TABLE ("result" text, "role" text, "clubId" uuid, "invitedBy" uuid, "ended" text)
LANGUAGE plpgsql VOLATILE SECURITY DEFINER SET search_path = public, pg_temp AS $$
#variable_conflict use_column
DECLARE
  i "Invitation";
  began timestamptz := least(at, now());
  before text;
BEGIN
  SELECT * INTO i FROM "Invitation" WHERE "tokenHash" = hash FOR UPDATE;
  IF NOT FOUND OR i."acceptedAt" IS NOT NULL OR i."withdrawnAt" IS NOT NULL OR i."expiresAt" <= now() THEN
    RETURN QUERY SELECT 'closed', NULL::text, NULL::uuid, NULL::uuid, NULL::text;
    RETURN;
  END IF;
  IF email IS NOT NULL THEN
    IF EXISTS (SELECT FROM "Account" a WHERE a."email" = lower(accept_invitation.email)) THEN
      RETURN QUERY SELECT 'address taken', NULL::text, NULL::uuid, NULL::uuid, NULL::text;
      RETURN;
    END IF;
    INSERT INTO "Account" ("id", "email", "name", "initials", "passwordHash", "createdAt")
    VALUES (app_account(), lower(accept_invitation.email), accept_invitation.name, accept_invitation.initials, password_hash, began);
  ELSIF NOT EXISTS (SELECT FROM "Account" a WHERE a."id" = app_account() AND a."disabledAt" IS NULL) THEN
    RAISE EXCEPTION 'no account accepts' USING ERRCODE = 'insufficient_privilege';
  END IF;
  IF i."clubId" IS NOT NULL THEN
    UPDATE "Membership" m SET "to" = began WHERE m."accountId" = app_account() AND m."clubId" = i."clubId" AND m."to" IS NULL
    RETURNING m."role" INTO before;
  END IF;
  INSERT INTO "Membership" ("id", "accountId", "programmeId", "clubId", "role", "from")
  VALUES (gen_random_uuid(), app_account(), i."programmeId", i."clubId", i."role", began);
  UPDATE "Invitation" SET "acceptedAt" = now(), "acceptedBy" = app_account() WHERE "id" = i."id";
  RETURN QUERY SELECT 'accepted', i."role", i."clubId", i."invitedBy", before;
END $$;

-- ── Divers ──
-- A diver new to the programme: her row, the words about her and her membership come together or not at all, so that nobody
-- can give herself a membership of a diver who is there already.
CREATE FUNCTION enter_diver(diver uuid, club uuid, given text, family text, born date, side text, leg text, since timestamptz, at timestamptz)
RETURNS void LANGUAGE plpgsql VOLATILE SECURITY DEFINER SET search_path = public, pg_temp AS $$
BEGIN
  IF NOT club = ANY (app_coach_club_ids(ARRAY['head'])) THEN
    RAISE EXCEPTION 'only the head coach enters divers' USING ERRCODE = 'insufficient_privilege';
  END IF;
  INSERT INTO "Diver" ("id", "programmeId", "twistingSide", "hurdleLeg", "createdAt")
  SELECT diver, c."programmeId", side, leg, at FROM "Club" c WHERE c."id" = club;
  INSERT INTO "DiverWords" ("diverId", "givenName", "familyName", "bornOn") VALUES (diver, given, family, born);
  INSERT INTO "DiverMembership" ("id", "diverId", "clubId", "from") VALUES (gen_random_uuid(), diver, club, least(since, at, now()));
END $$;

-- What is kept of a diver for speed is due as soon as her club is another: squads are left, the next reader works it out afresh.
CREATE FUNCTION put_into_club(diver uuid, club uuid, began timestamptz) RETURNS void
LANGUAGE plpgsql VOLATILE SECURITY DEFINER SET search_path = public, pg_temp AS $$
BEGIN
  UPDATE "DiverMembership" SET "to" = began WHERE "diverId" = diver AND "to" IS NULL;
  DELETE FROM "SquadDiver" WHERE "diverId" = diver;
  INSERT INTO "DiverMembership" ("id", "diverId", "clubId", "from") VALUES (gen_random_uuid(), diver, club, began);
  UPDATE "Readiness" SET "clubId" = club, "validUntil" = began::date - 1 WHERE "diverId" = diver;
END $$;

-- The other club's consent, which completes a transfer. `meant`: whom the old club says that the new one asked for.
CREATE FUNCTION agree_transfer(transfer uuid, meant uuid, at timestamptz) RETURNS text
LANGUAGE plpgsql VOLATILE SECURITY DEFINER SET search_path = public, pg_temp AS $$
DECLARE
  t "Transfer";
  moving uuid;
  began timestamptz := least(at, now());
  last "DiverMembership";
BEGIN
  SELECT * INTO t FROM "Transfer" WHERE "id" = transfer AND "agreedAt" IS NULL AND "endedAt" IS NULL FOR UPDATE;
  IF NOT FOUND OR NOT (CASE WHEN t."proposedFor" = t."fromClubId" THEN t."toClubId" ELSE t."fromClubId" END)
      = ANY (app_coach_club_ids(ARRAY['head'])) THEN
    RETURN 'closed';
  END IF;
  moving := coalesce(t."diverId", meant);
  PERFORM FROM "Diver" WHERE "id" = moving FOR UPDATE;
  SELECT * INTO last FROM "DiverMembership" WHERE "diverId" = moving ORDER BY "from" DESC, "to" DESC NULLS FIRST LIMIT 1;
  IF last."clubId" IS DISTINCT FROM t."fromClubId" THEN
    RETURN 'not there';
  END IF;
  PERFORM put_into_club(moving, t."toClubId", began);
  UPDATE "Transfer" SET "diverId" = moving, "name" = NULL, "bornOn" = NULL, "agreedBy" = app_account(), "agreedAt" = at WHERE "id" = t."id";
  RETURN 'agreed';
END $$;

-- A diver who left comes back to the club that she was with last.
CREATE FUNCTION take_back_diver(diver uuid, club uuid, at timestamptz) RETURNS boolean
LANGUAGE plpgsql VOLATILE SECURITY DEFINER SET search_path = public, pg_temp AS $$
BEGIN
  PERFORM FROM "Diver" WHERE "id" = diver FOR UPDATE;
  IF NOT diver = ANY (app_former_diver_ids()) OR NOT club = ANY (app_coach_club_ids(ARRAY['head'])) OR club IS DISTINCT FROM
      (SELECT m."clubId" FROM "DiverMembership" m WHERE m."diverId" = diver ORDER BY m."from" DESC LIMIT 1) THEN
    RETURN false;
  END IF;
  PERFORM put_into_club(diver, club, least(at, now()));
  RETURN true;
END $$;

-- The ledger also takes what the owner of the installation does at the console, who has no account.
CREATE OR REPLACE FUNCTION append_ledger(programme uuid, kind text, version integer, payload text, at timestamptz) RETURNS bigint
LANGUAGE plpgsql VOLATILE SECURITY DEFINER SET search_path = public, pg_temp AS $$
DECLARE entry bigint;
BEGIN
  IF NOT programme = ANY (app_programme_ids()) AND session_user <> current_user THEN
    RAISE EXCEPTION 'no role in this programme' USING ERRCODE = 'insufficient_privilege';
  END IF;
  INSERT INTO "LedgerHead" ("programmeId", "seq") VALUES (programme, 0) ON CONFLICT DO NOTHING;
  UPDATE "LedgerHead" SET "seq" = "seq" + 1 WHERE "programmeId" = programme RETURNING "seq" INTO entry;
  INSERT INTO "Ledger" ("programmeId", "seq", "kind", "schemaVersion", "payload", "hash", "at")
  VALUES (programme, entry, append_ledger.kind, version, append_ledger.payload,
          encode(sha256(convert_to(append_ledger.payload, 'UTF8')), 'hex'), append_ledger.at);
  RETURN entry;
END $$;

REVOKE EXECUTE ON FUNCTION app_led_programme_ids, app_former_diver_ids, invitation_of, accept_invitation, enter_diver,
  put_into_club, agree_transfer, take_back_diver FROM PUBLIC;
GRANT EXECUTE ON FUNCTION app_led_programme_ids, app_former_diver_ids, invitation_of, accept_invitation, enter_diver,
  agree_transfer, take_back_diver TO app_user;

-- ── Grants ──
GRANT SELECT ("id", "programmeId", "clubId", "role", "label", "invitedBy", "createdAt", "expiresAt", "withdrawnAt", "acceptedAt", "acceptedBy")
  ON "Invitation" TO app_user;
GRANT INSERT ON "Invitation", "Club", "VenueFlag", "CoachScope", "Squad", "SquadDiver", "Transfer" TO app_user;
GRANT UPDATE ("withdrawnAt") ON "Invitation" TO app_user;
GRANT UPDATE ("to") ON "Membership", "DiverMembership" TO app_user;
GRANT UPDATE ("name") ON "Squad" TO app_user;
GRANT DELETE ON "SquadDiver" TO app_user;
GRANT UPDATE ("givenName", "familyName", "bornOn") ON "DiverWords" TO app_user;
GRANT SELECT ON "Transfer" TO app_user;
GRANT UPDATE ("endedBy", "endedAt", "name", "bornOn") ON "Transfer" TO app_user;

-- ── Policies ──
ALTER TABLE "Invitation" ENABLE ROW LEVEL SECURITY;
ALTER TABLE "Transfer" ENABLE ROW LEVEL SECURITY;

-- The lead adds clubs, head coaches and reviewers; a head coach the assistants of her club.
CREATE POLICY added ON "Club" FOR INSERT TO app_user WITH CHECK ("programmeId" = ANY ((SELECT app_led_programme_ids())::uuid[]));
CREATE POLICY seen_in_programme ON "Membership" FOR SELECT TO app_user USING ("programmeId" = ANY ((SELECT app_led_programme_ids())::uuid[]));
CREATE POLICY ended ON "Membership" FOR UPDATE TO app_user USING (
  "accountId" <> (SELECT app_account()) AND (
    "programmeId" = ANY ((SELECT app_led_programme_ids())::uuid[])
    OR ("role" = 'assistant' AND "clubId" = ANY ((SELECT app_coach_club_ids(ARRAY['head']))::uuid[]))));
CREATE POLICY seen ON "Invitation" FOR SELECT TO app_user USING (
  "programmeId" = ANY ((SELECT app_led_programme_ids())::uuid[])
  OR ("role" = 'assistant' AND "clubId" = ANY ((SELECT app_coach_club_ids(ARRAY['head']))::uuid[])));
CREATE POLICY made ON "Invitation" FOR INSERT TO app_user WITH CHECK (
  "invitedBy" = (SELECT app_account()) AND "acceptedAt" IS NULL AND (
    ("role" <> 'assistant' AND "programmeId" = ANY ((SELECT app_led_programme_ids())::uuid[]))
    OR ("role" = 'assistant' AND "clubId" = ANY ((SELECT app_coach_club_ids(ARRAY['head']))::uuid[])))
  AND ("clubId" IS NULL OR EXISTS (SELECT FROM "Club" c WHERE c."id" = "clubId" AND c."programmeId" = "Invitation"."programmeId")));
CREATE POLICY withdrawn ON "Invitation" FOR UPDATE TO app_user USING (
  "programmeId" = ANY ((SELECT app_led_programme_ids())::uuid[])
  OR ("role" = 'assistant' AND "clubId" = ANY ((SELECT app_coach_club_ids(ARRAY['head']))::uuid[])));
CREATE POLICY set_for_coach ON "CoachScope" FOR INSERT TO app_user WITH CHECK (
  "setBy" = (SELECT app_account()) AND "accountId" <> (SELECT app_account()) AND EXISTS (
    SELECT FROM "Membership" m WHERE m."accountId" = "CoachScope"."accountId" AND m."clubId" = "CoachScope"."clubId" AND m."to" IS NULL
      AND (m."programmeId" = ANY ((SELECT app_led_programme_ids())::uuid[])
        OR (m."role" = 'assistant' AND m."clubId" = ANY ((SELECT app_coach_club_ids(ARRAY['head']))::uuid[])))));

-- Of a club, kept by its head coach.
CREATE POLICY recorded ON "VenueFlag" FOR INSERT TO app_user WITH CHECK (
  "recordedBy" = (SELECT app_account()) AND "clubId" = ANY ((SELECT app_coach_club_ids(ARRAY['head']))::uuid[]));
CREATE POLICY made ON "Squad" FOR INSERT TO app_user WITH CHECK ("clubId" = ANY ((SELECT app_coach_club_ids(ARRAY['head']))::uuid[]));
CREATE POLICY renamed ON "Squad" FOR UPDATE TO app_user USING ("clubId" = ANY ((SELECT app_coach_club_ids(ARRAY['head']))::uuid[]));
CREATE POLICY put_in ON "SquadDiver" FOR INSERT TO app_user WITH CHECK (EXISTS (
  SELECT FROM "Squad" s JOIN "DiverMembership" m ON m."clubId" = s."clubId"
  WHERE s."id" = "SquadDiver"."squadId" AND m."diverId" = "SquadDiver"."diverId" AND m."to" IS NULL
    AND s."clubId" = ANY ((SELECT app_coach_club_ids(ARRAY['head']))::uuid[])));
CREATE POLICY taken_out ON "SquadDiver" FOR DELETE TO app_user USING (EXISTS (
  SELECT FROM "Squad" s WHERE s."id" = "SquadDiver"."squadId" AND s."clubId" = ANY ((SELECT app_coach_club_ids(ARRAY['head']))::uuid[])));

-- About a diver.
CREATE POLICY mended ON "DiverWords" FOR UPDATE TO app_user USING ("diverId" = ANY ((SELECT app_head_diver_ids())::uuid[]));
CREATE POLICY seen_by_last_club ON "DiverWords" FOR SELECT TO app_user USING ("diverId" = ANY ((SELECT app_former_diver_ids())::uuid[]));
CREATE POLICY seen_by_last_club ON "DiverMembership" FOR SELECT TO app_user USING ("diverId" = ANY ((SELECT app_former_diver_ids())::uuid[]));
CREATE POLICY ended ON "DiverMembership" FOR UPDATE TO app_user USING ("clubId" = ANY ((SELECT app_coach_club_ids(ARRAY['head']))::uuid[]));

-- A transfer is the two clubs' own; neither reads the other's record before it is complete.
CREATE POLICY seen ON "Transfer" FOR SELECT TO app_user USING (
  "fromClubId" = ANY ((SELECT app_coach_club_ids(ARRAY['head']))::uuid[]) OR "toClubId" = ANY ((SELECT app_coach_club_ids(ARRAY['head']))::uuid[]));
CREATE POLICY proposed ON "Transfer" FOR INSERT TO app_user WITH CHECK (
  "proposedBy" = (SELECT app_account()) AND "agreedAt" IS NULL
  AND "proposedFor" = ANY ((SELECT app_coach_club_ids(ARRAY['head']))::uuid[])
  AND (SELECT count(DISTINCT c."programmeId") FROM "Club" c WHERE c."id" IN ("fromClubId", "toClubId")) = 1
  AND CASE WHEN "proposedFor" = "toClubId" THEN "diverId" IS NULL
    ELSE EXISTS (SELECT FROM "DiverMembership" m WHERE m."diverId" = "Transfer"."diverId" AND m."clubId" = "fromClubId" AND m."to" IS NULL) END);
CREATE POLICY ended ON "Transfer" FOR UPDATE TO app_user USING (
  "agreedAt" IS NULL AND ("fromClubId" = ANY ((SELECT app_coach_club_ids(ARRAY['head']))::uuid[]) OR "toClubId" = ANY ((SELECT app_coach_club_ids(ARRAY['head']))::uuid[])));

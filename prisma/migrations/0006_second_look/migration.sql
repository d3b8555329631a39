-- A second coach on video, blind to the first; also from another club, when the programme has opened that and the diver's
-- head coach has granted that one attempt.

-- Whether the programme lets coaches look across clubs: one row each time the lead opens or closes it; the latest counts.
CREATE TABLE "VideoOpening" (
    "id" UUID NOT NULL,
    "programmeId" UUID NOT NULL,
    "open" BOOLEAN NOT NULL,
    "by" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "VideoOpening_pkey" PRIMARY KEY ("id")
);
CREATE INDEX "VideoOpening_programmeId_at_idx" ON "VideoOpening"("programmeId", "at");
ALTER TABLE "VideoOpening" ADD FOREIGN KEY ("programmeId") REFERENCES "Programme"("id");

-- One attempt granted to one coach, or withdrawn from her: the latest row of the two counts. `clubId` is the club that granted.
CREATE TABLE "VideoGrant" (
    "id" UUID NOT NULL,
    "clubId" UUID NOT NULL,
    "diverId" UUID NOT NULL,
    "attemptId" UUID NOT NULL,
    "coachId" UUID NOT NULL,
    "granted" BOOLEAN NOT NULL,
    "by" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "VideoGrant_pkey" PRIMARY KEY ("id")
);
CREATE INDEX "VideoGrant_coachId_attemptId_at_idx" ON "VideoGrant"("coachId", "attemptId", "at");
CREATE INDEX "VideoGrant_diverId_idx" ON "VideoGrant"("diverId");
ALTER TABLE "VideoGrant" ADD FOREIGN KEY ("clubId") REFERENCES "Club"("id");
ALTER TABLE "VideoGrant" ADD FOREIGN KEY ("diverId") REFERENCES "Diver"("id");
ALTER TABLE "VideoGrant" ADD FOREIGN KEY ("coachId") REFERENCES "Account"("id");

CREATE TRIGGER append_only BEFORE UPDATE OR DELETE OR TRUNCATE ON "VideoOpening" FOR EACH STATEMENT EXECUTE FUNCTION refuse_change();
CREATE TRIGGER append_only BEFORE UPDATE OR DELETE OR TRUNCATE ON "VideoGrant" FOR EACH STATEMENT EXECUTE FUNCTION refuse_change();

CREATE FUNCTION video_opened(programme uuid) RETURNS boolean LANGUAGE sql STABLE SECURITY DEFINER SET search_path = public, pg_temp
BEGIN ATOMIC
  SELECT coalesce((
    SELECT o."open" FROM "VideoOpening" o WHERE o."programmeId" = programme ORDER BY o."at" DESC, o."id" DESC LIMIT 1), false);
END;

-- The attempts that this account may look at today although their divers are not of her clubs: granted and not withdrawn, by
-- the club in which the diver still is, in a programme that is open and in which the account still coaches, with consent.
CREATE FUNCTION app_granted_attempts() RETURNS TABLE ("attemptId" uuid, "diverId" uuid) LANGUAGE sql STABLE SECURITY DEFINER SET search_path = public, pg_temp
BEGIN ATOMIC
  SELECT g."attemptId", g."diverId" FROM (
    SELECT DISTINCT ON (v."attemptId") v.* FROM "VideoGrant" v WHERE v."coachId" = app_account()
    ORDER BY v."attemptId", v."at" DESC, v."id" DESC) g
  JOIN "Diver" d ON d."id" = g."diverId"
  WHERE g."granted" AND video_opened(d."programmeId") AND video_consented(g."diverId")
    AND EXISTS (SELECT FROM "DiverMembership" m WHERE m."diverId" = g."diverId" AND m."clubId" = g."clubId"
      AND m."from" <= now() AND (m."to" IS NULL OR m."to" > now()))
    AND EXISTS (SELECT FROM "Membership" m WHERE m."accountId" = app_account() AND m."programmeId" = d."programmeId"
      AND m."clubId" IS NOT NULL AND m."from" <= now() AND (m."to" IS NULL OR m."to" > now()));
END;

CREATE FUNCTION app_granted_attempt_ids() RETURNS uuid[] LANGUAGE sql STABLE SECURITY DEFINER SET search_path = public, pg_temp
BEGIN ATOMIC
  SELECT coalesce(array_agg(g."attemptId"), '{}') FROM app_granted_attempts() g;
END;

CREATE FUNCTION app_granted_diver_ids() RETURNS uuid[] LANGUAGE sql STABLE SECURITY DEFINER SET search_path = public, pg_temp
BEGIN ATOMIC
  SELECT coalesce(array_agg(DISTINCT g."diverId"), '{}') FROM app_granted_attempts() g;
END;

CREATE FUNCTION app_granted_moment_ids() RETURNS uuid[] LANGUAGE sql STABLE SECURITY DEFINER SET search_path = public, pg_temp
BEGIN ATOMIC
  SELECT coalesce(array_agg(m."id"), '{}') FROM "Moment" m JOIN "Observation" o ON o."id" = m."observationId"
  WHERE o."attemptId" = ANY (app_granted_attempt_ids());
END;

-- Of a granted attempt: its moments' attempts, which the account cannot learn from the observations, and the given name.
CREATE FUNCTION granted_looks() RETURNS TABLE ("attemptId" uuid, "givenName" text, "momentId" uuid) LANGUAGE sql STABLE SECURITY DEFINER SET search_path = public, pg_temp
BEGIN ATOMIC
  SELECT g."attemptId", coalesce(w."givenName", 'Name erased'), m."id" FROM app_granted_attempts() g
  LEFT JOIN "DiverWords" w ON w."diverId" = g."diverId"
  LEFT JOIN "Observation" o ON o."attemptId" = g."attemptId"
  LEFT JOIN "Moment" m ON m."observationId" = o."id";
END;

-- Before a granted look is kept: locks the diver's row, so that decisions on her wait, and has her readiness worked out again
-- by whoever of her club reads it next, for this account may not. False where nothing is granted, or nothing may be recorded.
CREATE FUNCTION take_granted_look(attempt uuid) RETURNS boolean LANGUAGE plpgsql VOLATILE SECURITY DEFINER SET search_path = public, pg_temp AS $$
DECLARE diver uuid;
BEGIN
  SELECT g."diverId" INTO diver FROM app_granted_attempts() g WHERE g."attemptId" = attempt;
  IF diver IS NULL THEN RETURN false; END IF;
  PERFORM FROM "Diver" d WHERE d."id" = diver FOR UPDATE;
  IF NOT coalesce((SELECT c."given" FROM "Consent" c WHERE c."diverId" = diver AND c."purpose" = 'record'
                   ORDER BY c."recordedAt" DESC, c."id" DESC LIMIT 1), true) THEN
    RETURN false;
  END IF;
  UPDATE "Readiness" SET "validUntil" = DATE '1970-01-01', "ready" = false, "readySince" = NULL WHERE "diverId" = diver;
  RETURN true;
END $$;

-- Whom a head coach may ask: coaches of the programme's other clubs, while it is open.
CREATE FUNCTION video_coaches() RETURNS TABLE ("id" uuid, "name" text, "club" text) LANGUAGE sql STABLE SECURITY DEFINER SET search_path = public, pg_temp
BEGIN ATOMIC
  SELECT DISTINCT a."id", a."name", c."name" FROM "Membership" m
  JOIN "Account" a ON a."id" = m."accountId" JOIN "Club" c ON c."id" = m."clubId"
  WHERE m."programmeId" = ANY (app_programme_ids()) AND video_opened(m."programmeId")
    AND m."from" <= now() AND (m."to" IS NULL OR m."to" > now()) AND a."disabledAt" IS NULL
    AND NOT c."id" = ANY (app_coach_club_ids(ARRAY['assistant', 'head']))
    AND cardinality(app_coach_club_ids(ARRAY['head'])) > 0
  ORDER BY c."name", a."name";
END;

REVOKE EXECUTE ON FUNCTION video_opened, app_granted_attempts, app_granted_attempt_ids, app_granted_diver_ids,
  app_granted_moment_ids, granted_looks, take_granted_look, video_coaches FROM PUBLIC;
GRANT EXECUTE ON FUNCTION video_opened, app_granted_attempts, app_granted_attempt_ids, app_granted_diver_ids,
  app_granted_moment_ids, granted_looks, take_granted_look, video_coaches TO app_user;

GRANT SELECT, INSERT ON "VideoOpening", "VideoGrant" TO app_user;
ALTER TABLE "VideoOpening" ENABLE ROW LEVEL SECURITY;
ALTER TABLE "VideoGrant" ENABLE ROW LEVEL SECURITY;
CREATE POLICY seen ON "VideoOpening" FOR SELECT TO app_user USING ("programmeId" = ANY ((SELECT app_programme_ids())::uuid[]));
CREATE POLICY written ON "VideoOpening" FOR INSERT TO app_user WITH CHECK (
  "by" = (SELECT app_account()) AND EXISTS (
    SELECT FROM "Membership" m WHERE m."accountId" = (SELECT app_account()) AND m."programmeId" = "VideoOpening"."programmeId"
      AND m."role" = 'lead' AND m."from" <= now() AND (m."to" IS NULL OR m."to" > now())));
CREATE POLICY seen ON "VideoGrant" FOR SELECT TO app_user USING (
  "diverId" = ANY ((SELECT app_diver_ids())::uuid[]) OR "coachId" = (SELECT app_account()) OR "by" = (SELECT app_account()));
CREATE POLICY written ON "VideoGrant" FOR INSERT TO app_user
  WITH CHECK ("diverId" = ANY ((SELECT app_head_diver_ids())::uuid[]) AND "by" = (SELECT app_account()));

-- What a grant opens: the attempt, its moments (which the consent still narrows), and one view of her own on video.
CREATE POLICY granted ON "Attempt" FOR SELECT TO app_user USING ("id" = ANY ((SELECT app_granted_attempt_ids())::uuid[]));
CREATE POLICY granted ON "Moment" FOR SELECT TO app_user USING ("id" = ANY ((SELECT app_granted_moment_ids())::uuid[]));
CREATE POLICY granted ON "Observation" FOR INSERT TO app_user WITH CHECK (
  "coachId" = (SELECT app_account()) AND "observedOn" = 'video' AND "attemptId" = ANY ((SELECT app_granted_attempt_ids())::uuid[]));
CREATE POLICY granted ON "Words" FOR INSERT TO app_user
  WITH CHECK ("writtenBy" = (SELECT app_account()) AND "diverId" = ANY ((SELECT app_granted_diver_ids())::uuid[]));

-- Who else has rated a granted attempt is not hers to see.
DROP POLICY seen ON "ObservationHead";
CREATE POLICY seen ON "ObservationHead" FOR SELECT TO app_user USING (
  "coachId" = (SELECT app_account()) OR EXISTS (
    SELECT FROM "Attempt" a WHERE a."clubId" = "ObservationHead"."clubId" AND a."id" = "attemptId"
      AND (a."diverId" = ANY ((SELECT app_diver_ids())::uuid[]) OR a."coachId" = (SELECT app_account()))));

-- Guides that families may read, and moments that head coaches name as exemplars.

-- ── Guides: whether families may read them, one row each time the lead opens or closes them; the latest counts ──
CREATE TABLE "GuideOpening" (
    "id" UUID NOT NULL,
    "programmeId" UUID NOT NULL,
    "open" BOOLEAN NOT NULL,
    "listed" BOOLEAN NOT NULL,
    "by" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "GuideOpening_pkey" PRIMARY KEY ("id")
);
CREATE INDEX "GuideOpening_programmeId_at_idx" ON "GuideOpening"("programmeId", "at");
ALTER TABLE "GuideOpening" ADD FOREIGN KEY ("programmeId") REFERENCES "Programme"("id");
ALTER TABLE "GuideOpening" ADD CHECK ("open" OR NOT "listed");
CREATE TRIGGER append_only BEFORE UPDATE OR DELETE OR TRUNCATE ON "GuideOpening" FOR EACH STATEMENT EXECUTE FUNCTION refuse_change();

ALTER TABLE "GuideOpening" ENABLE ROW LEVEL SECURITY;
GRANT SELECT, INSERT ON "GuideOpening" TO app_user;
CREATE POLICY seen ON "GuideOpening" FOR SELECT TO app_user USING ("programmeId" = ANY ((SELECT app_programme_ids())::uuid[]));
CREATE POLICY written ON "GuideOpening" FOR INSERT TO app_user
  WITH CHECK ("by" = (SELECT app_account()) AND "programmeId" = ANY ((SELECT app_led_programme_ids())::uuid[]));

-- Without an account: a programme whose guides are open, and its edition in force. Of any other there is no row.
CREATE FUNCTION open_guides(programme uuid) RETURNS TABLE ("name" text, "hash" text, "listed" boolean)
LANGUAGE sql STABLE SECURITY DEFINER SET search_path = public, pg_temp
BEGIN ATOMIC
  SELECT p."name", e."hash", o."listed" FROM "Programme" p
  JOIN LATERAL (SELECT g.* FROM "GuideOpening" g WHERE g."programmeId" = p."id" ORDER BY g."at" DESC, g."id" DESC LIMIT 1) o ON o."open"
  JOIN LATERAL (SELECT d.* FROM "Edition" d WHERE d."programmeId" = p."id"
    AND d."publishedAt" <= now() + p."clockOffsetMs" * interval '1 millisecond' ORDER BY d."number" DESC LIMIT 1) e ON true
  WHERE p."id" = programme;
END;

CREATE FUNCTION open_edition(programme uuid) RETURNS text LANGUAGE sql STABLE SECURITY DEFINER SET search_path = public, pg_temp
BEGIN ATOMIC
  SELECT e."document" FROM open_guides(programme) o JOIN "Edition" e ON e."programmeId" = programme AND e."hash" = o."hash";
END;

-- ── A consent of its own for exemplars, and how far it reaches ──
ALTER TABLE "Consent" DROP CONSTRAINT "Consent_purpose_check";
ALTER TABLE "Consent" ADD CHECK ("purpose" IN ('record', 'video', 'exemplar'));
ALTER TABLE "Consent" ADD COLUMN "reach" TEXT;
ALTER TABLE "Consent" ADD CHECK ("reach" IN ('club', 'programme', 'everybody'));
ALTER TABLE "Consent" ADD CHECK (("purpose" = 'exemplar' AND "given") = ("reach" IS NOT NULL));

-- How far the exemplars of a diver reach today; null: nobody sees any. Video wants its own consent beside.
CREATE FUNCTION exemplar_reach(diver uuid) RETURNS text LANGUAGE sql STABLE SECURITY DEFINER SET search_path = public, pg_temp
BEGIN ATOMIC
  SELECT c."reach" FROM (
    SELECT e."reach" FROM "Consent" e WHERE e."diverId" = diver AND e."purpose" = 'exemplar'
    ORDER BY e."recordedAt" DESC, e."id" DESC LIMIT 1) c
  WHERE video_consented(diver);
END;

-- ── Exemplars: a moment that shows a criterion at a level, or a fault; `clubId` is the club at writing ──
CREATE TABLE "Exemplar" (
    "id" UUID NOT NULL,
    "clubId" UUID NOT NULL,
    "diverId" UUID NOT NULL,
    "momentId" UUID NOT NULL,
    "attemptId" UUID NOT NULL,
    "skill" TEXT NOT NULL,
    "place" TEXT NOT NULL,
    "criterion" TEXT,
    "level" TEXT,
    "fault" TEXT,
    "edition" TEXT NOT NULL,
    "by" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "Exemplar_pkey" PRIMARY KEY ("id"),
    CONSTRAINT "Exemplar_shows" CHECK (("criterion" IS NULL) = ("level" IS NULL) AND ("criterion" IS NULL) <> ("fault" IS NULL))
);
CREATE INDEX "Exemplar_diverId_idx" ON "Exemplar"("diverId");
CREATE INDEX "Exemplar_momentId_idx" ON "Exemplar"("momentId");
ALTER TABLE "Exemplar" ADD FOREIGN KEY ("clubId") REFERENCES "Club"("id");
ALTER TABLE "Exemplar" ADD FOREIGN KEY ("diverId") REFERENCES "Diver"("id");

CREATE TABLE "ExemplarWithdrawal" (
    "id" UUID NOT NULL,
    "clubId" UUID NOT NULL,
    "diverId" UUID NOT NULL,
    "exemplarId" UUID NOT NULL,
    "by" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "ExemplarWithdrawal_pkey" PRIMARY KEY ("id")
);
CREATE UNIQUE INDEX "ExemplarWithdrawal_exemplarId_key" ON "ExemplarWithdrawal"("exemplarId");
CREATE INDEX "ExemplarWithdrawal_diverId_idx" ON "ExemplarWithdrawal"("diverId");
ALTER TABLE "ExemplarWithdrawal" ADD FOREIGN KEY ("exemplarId") REFERENCES "Exemplar"("id");
ALTER TABLE "ExemplarWithdrawal" ADD FOREIGN KEY ("clubId") REFERENCES "Club"("id");
ALTER TABLE "ExemplarWithdrawal" ADD FOREIGN KEY ("diverId") REFERENCES "Diver"("id");

CREATE TRIGGER append_only BEFORE UPDATE OR DELETE OR TRUNCATE ON "Exemplar" FOR EACH STATEMENT EXECUTE FUNCTION refuse_change();
CREATE TRIGGER append_only BEFORE UPDATE OR DELETE OR TRUNCATE ON "ExemplarWithdrawal" FOR EACH STATEMENT EXECUTE FUNCTION refuse_change();

-- What stands today: not withdrawn, with both consents, the film not erased, the diver in a club of the programme. A consent
-- that was withdrawn ends for good what was named before.
CREATE FUNCTION standing_exemplars() RETURNS TABLE ("id" uuid, "programmeId" uuid, "diverId" uuid, "momentId" uuid, "attemptId" uuid,
  "skill" text, "place" text, "criterion" text, "level" text, "fault" text, "link" text, "startMs" integer, "endMs" integer, "reach" text)
LANGUAGE sql STABLE SECURITY DEFINER SET search_path = public, pg_temp
BEGIN ATOMIC
  SELECT x."id", d."programmeId", x."diverId", x."momentId", x."attemptId", x."skill", x."place", x."criterion", x."level", x."fault",
    m."link", m."startMs", m."endMs", exemplar_reach(x."diverId")
  FROM "Exemplar" x JOIN "Diver" d ON d."id" = x."diverId"
  JOIN "Moment" m ON m."id" = x."momentId" AND m."diverId" = x."diverId" AND m."link" IS NOT NULL
  WHERE exemplar_reach(x."diverId") IS NOT NULL
    AND NOT EXISTS (SELECT FROM "ExemplarWithdrawal" w WHERE w."exemplarId" = x."id")
    AND NOT EXISTS (SELECT FROM "Consent" c WHERE c."diverId" = x."diverId" AND c."purpose" = 'exemplar' AND NOT c."given" AND c."recordedAt" >= x."at")
    AND EXISTS (SELECT FROM "DiverMembership" p JOIN "Club" c ON c."id" = p."clubId"
      WHERE p."diverId" = x."diverId" AND c."programmeId" = d."programmeId" AND p."from" <= now() AND (p."to" IS NULL OR p."to" > now()));
END;

-- What this account may see of them: nothing of whose they are, and the moment's own page only for the coaches of her club.
-- `besides`: an attempt that she is about to rate blind, whose own moments would tell what others saw in it.
CREATE FUNCTION shown_exemplars(besides uuid) RETURNS TABLE ("id" uuid, "momentId" uuid, "skill" text, "place" text, "criterion" text,
  "level" text, "fault" text, "link" text, "startMs" integer, "endMs" integer)
LANGUAGE sql STABLE SECURITY DEFINER SET search_path = public, pg_temp
BEGIN ATOMIC
  SELECT x."id", CASE WHEN x."diverId" = ANY (app_coach_diver_ids()) THEN x."momentId" END, x."skill", x."place", x."criterion",
    x."level", x."fault", x."link", x."startMs", x."endMs"
  FROM standing_exemplars() x
  WHERE x."attemptId" IS DISTINCT FROM besides AND (x."diverId" = ANY (app_coach_diver_ids())
    OR (x."reach" IN ('programme', 'everybody') AND x."programmeId" = ANY (app_programme_ids())));
END;

-- Without an account: only where the guides are open and the consent says everybody.
CREATE FUNCTION open_exemplars(programme uuid) RETURNS TABLE ("id" uuid, "momentId" uuid, "skill" text, "place" text, "criterion" text,
  "level" text, "fault" text, "link" text, "startMs" integer, "endMs" integer)
LANGUAGE sql STABLE SECURITY DEFINER SET search_path = public, pg_temp
BEGIN ATOMIC
  SELECT x."id", NULL::uuid, x."skill", x."place", x."criterion", x."level", x."fault", x."link", x."startMs", x."endMs"
  FROM open_guides(programme) JOIN standing_exemplars() x ON x."programmeId" = programme AND x."reach" = 'everybody';
END;

REVOKE EXECUTE ON FUNCTION open_guides, open_edition, exemplar_reach, standing_exemplars, shown_exemplars, open_exemplars FROM PUBLIC;
GRANT EXECUTE ON FUNCTION open_guides, open_edition, exemplar_reach, shown_exemplars, open_exemplars TO app_user;

ALTER TABLE "Exemplar" ENABLE ROW LEVEL SECURITY;
ALTER TABLE "ExemplarWithdrawal" ENABLE ROW LEVEL SECURITY;
GRANT SELECT, INSERT ON "Exemplar", "ExemplarWithdrawal" TO app_user;
-- The rows name a diver: they are for the coaches of her club, and named and withdrawn by its head coaches.
CREATE POLICY seen ON "Exemplar" FOR SELECT TO app_user USING ("diverId" = ANY ((SELECT app_coach_diver_ids())::uuid[]));
CREATE POLICY seen ON "ExemplarWithdrawal" FOR SELECT TO app_user USING ("diverId" = ANY ((SELECT app_coach_diver_ids())::uuid[]));
CREATE POLICY written ON "Exemplar" FOR INSERT TO app_user
  WITH CHECK ("diverId" = ANY ((SELECT app_head_diver_ids())::uuid[]) AND "by" = (SELECT app_account()));
CREATE POLICY written ON "ExemplarWithdrawal" FOR INSERT TO app_user WITH CHECK (
  "diverId" = ANY ((SELECT app_head_diver_ids())::uuid[]) AND "by" = (SELECT app_account())
  AND EXISTS (SELECT FROM "Exemplar" x WHERE x."id" = "exemplarId" AND x."diverId" = "ExemplarWithdrawal"."diverId"));
-- Without consent none is named and none is shown, whatever else admits a row.
CREATE POLICY shown_by_consent ON "Exemplar" AS RESTRICTIVE FOR SELECT TO app_user USING (exemplar_reach("diverId") IS NOT NULL);
CREATE POLICY named_by_consent ON "Exemplar" AS RESTRICTIVE FOR INSERT TO app_user WITH CHECK (
  exemplar_reach("diverId") IS NOT NULL
  AND EXISTS (SELECT FROM "Moment" m WHERE m."id" = "momentId" AND m."diverId" = "Exemplar"."diverId" AND m."link" IS NOT NULL));

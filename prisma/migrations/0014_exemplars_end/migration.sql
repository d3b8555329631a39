-- Exemplars end for good with either consent that they rest on: a consent to video that is given again after a withdrawal shows
-- films to coaches again, and none of them as an exemplar until it is named again. Who may call the function stays as it was.
CREATE OR REPLACE FUNCTION standing_exemplars() RETURNS TABLE ("id" uuid, "programmeId" uuid, "diverId" uuid, "momentId" uuid, "attemptId" uuid,
  "skill" text, "place" text, "criterion" text, "level" text, "fault" text, "link" text, "startMs" integer, "endMs" integer, "reach" text)
LANGUAGE sql STABLE SECURITY DEFINER SET search_path = public, pg_temp
BEGIN ATOMIC
  SELECT x."id", d."programmeId", x."diverId", x."momentId", x."attemptId", x."skill", x."place", x."criterion", x."level", x."fault",
    m."link", m."startMs", m."endMs", exemplar_reach(x."diverId")
  FROM "Exemplar" x JOIN "Diver" d ON d."id" = x."diverId"
  JOIN "Moment" m ON m."id" = x."momentId" AND m."diverId" = x."diverId" AND m."link" IS NOT NULL
  WHERE exemplar_reach(x."diverId") IS NOT NULL
    AND NOT EXISTS (SELECT FROM "ExemplarWithdrawal" w WHERE w."exemplarId" = x."id")
    AND NOT EXISTS (SELECT FROM "Consent" c WHERE c."diverId" = x."diverId" AND c."purpose" IN ('exemplar', 'video')
      AND NOT c."given" AND c."recordedAt" >= x."at")
    AND EXISTS (SELECT FROM "DiverMembership" p JOIN "Club" c ON c."id" = p."clubId"
      WHERE p."diverId" = x."diverId" AND c."programmeId" = d."programmeId" AND p."from" <= now() AND (p."to" IS NULL OR p."to" > now()));
END;

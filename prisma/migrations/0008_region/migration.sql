-- Who left the programme: divers whose last membership has ended. Their rows are no longer seen by anybody, so a reviewer
-- is told of them as a club and a day, without who it was.
CREATE FUNCTION region_leavers(programme uuid, at timestamptz) RETURNS TABLE ("clubId" uuid, "leftAt" timestamptz)
LANGUAGE sql STABLE SECURITY DEFINER SET search_path = public, pg_temp
BEGIN ATOMIC
  SELECT last."clubId", last."to" FROM (
    SELECT DISTINCT ON (m."diverId") m."clubId", m."to"
    FROM "DiverMembership" m JOIN "Club" c ON c."id" = m."clubId"
    WHERE c."programmeId" = programme AND programme = ANY (app_reviewed_programme_ids()) AND m."from" <= at
    ORDER BY m."diverId", coalesce(m."to", 'infinity') DESC) last
  WHERE last."to" <= at;
END;
REVOKE EXECUTE ON FUNCTION region_leavers FROM PUBLIC;
GRANT EXECUTE ON FUNCTION region_leavers TO app_user;

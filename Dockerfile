# Two stages: the first builds the jar with Maven, the second runs it as an unprivileged user.
# Runs with a read-only root file system; all that changes lives under /data:
#   docker run --rm -v lab-data:/data surfeit token new --name me --scopes read,write,correct,admin     # once, before the first start
#   docker run --read-only --tmpfs /tmp -v lab-data:/data -p 127.0.0.1:8420:8420 surfeit
# With the record in a PostgreSQL database nothing is kept under /data, and any number of containers may run:
#   docker run --read-only --tmpfs /tmp -p 8420:8420 -e SURFEIT_DATABASE_URL=jdbc:postgresql://db:5432/lab -e SURFEIT_DATABASE_USER=lab \
#     -e SURFEIT_DATABASE_PASSWORD_FILE=/run/secrets/lab -v ./lab-password:/run/secrets/lab:ro surfeit
FROM maven:3.9-eclipse-temurin-17 AS build
WORKDIR /build
COPY pom.xml .
RUN mvn -B -q dependency:go-offline
COPY . .
RUN mvn -B -q -DskipTests package
# SQLite's library for this machine: no start unpacks it, and /tmp may forbid programs, as Docker's --tmpfs does.
RUN cd target && jar xf surfeit.jar org/sqlite/native/Linux/$(uname -m)/libsqlitejdbc.so \
 && mv org/sqlite/native/Linux/$(uname -m)/libsqlitejdbc.so .

FROM eclipse-temurin:17-jre
COPY --from=build /build/target/surfeit.jar /build/target/libsqlitejdbc.so /opt/surfeit/
# An archive of the classes of a start, read by every start of this image: it halves the time to the first answer. The
# first round makes the record, so that the second is a start like all others.
RUN for classes in -Xshare:auto -XX:ArchiveClassesAtExit=/opt/surfeit/surfeit.jsa; do \
      java $classes -XX:+UseSerialGC -Dorg.sqlite.lib.path=/opt/surfeit -jar /opt/surfeit/surfeit.jar serve --data /tmp/record & \
      until java -jar /opt/surfeit/surfeit.jar health || ! kill -0 $!; do sleep 1; done; \
      kill $!; wait $!; \
    done; rm -r /tmp/record; test -s /opt/surfeit/surfeit.jsa
RUN mkdir /data && chown 10001:10001 /data
USER 10001:10001
VOLUME /data
EXPOSE 8420
ENV SURFEIT_DATA=/data SURFEIT_HOST=0.0.0.0
HEALTHCHECK --interval=30s --timeout=5s --start-period=15s \
  CMD ["java", "-XX:TieredStopAtLevel=1", "-XX:+UseSerialGC", "-Xmx32m", "-jar", "/opt/surfeit/surfeit.jar", "health", "--host", "127.0.0.1"]
# Three quarters of the container's memory at most; where only the service runs, 64 MB do for a million spots on some
# thousand particles. The serial collector is the smallest; with many cores and much memory leave it out.
ENTRYPOINT ["java", "-XX:SharedArchiveFile=/opt/surfeit/surfeit.jsa", "-XX:+UseSerialGC", "-Xms8m", "-XX:MaxRAMPercentage=75", \
  "-Dorg.sqlite.lib.path=/opt/surfeit", "-jar", "/opt/surfeit/surfeit.jar"]
CMD ["serve"]

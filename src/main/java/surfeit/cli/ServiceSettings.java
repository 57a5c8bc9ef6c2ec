package surfeit.cli;

import java.time.Duration;
import surfeit.http.AccessRules;
import surfeit.http.RequestLimits;
import surfeit.http.ServerSettings;
import surfeit.http.TrustedProxies;
import surfeit.intake.IntakeLimits;

/** The settings of the program in the form its parts take them. */
final class ServiceSettings {
    private ServiceSettings() {
    }

    /** Limits of uploads, also of files read without a service. */
    static IntakeLimits intake(Settings settings) {
        return new IntakeLimits(settings.whole(Setting.UPLOAD_ROWS_MAX), settings.whole(Setting.ELEMENTS_PER_SPOT_MAX),
            settings.whole(Setting.LABEL_LENGTH_MAX), settings.whole(Setting.CELL_LENGTH_MAX),
            settings.whole(Setting.COLUMNS_MAX));
    }

    static ServerSettings server(Settings settings) {
        RequestLimits requests = new RequestLimits(settings.whole(Setting.UPLOAD_BYTES_MAX),
            settings.whole(Setting.JSON_BYTES_MAX), settings.whole(Setting.JSON_DEPTH_MAX),
            settings.whole(Setting.HEADER_BYTES_MAX),
            settings.whole(Setting.REQUESTS_PER_SECOND_MAX), settings.whole(Setting.OPEN_STREAMS_MAX),
            settings.whole(Setting.ARRIVING_BODIES_MAX), settings.whole(Setting.LARGE_ANSWERS_MAX),
            seconds(settings, Setting.BODY_STALL_S), seconds(settings, Setting.BODY_TOTAL_S));
        AccessRules access = new AccessRules(noAuth(settings),
            TrustedProxies.of(settings.get(Setting.TRUSTED_PROXIES)));
        return new ServerSettings(settings.get(Setting.HOST), settings.whole(Setting.PORT), requests, intake(settings),
            access, ServerSettings.DEFAULT.stopPatience(), Duration.ofDays(settings.whole(Setting.EVENTS_KEPT_DAYS)));
    }

    static boolean noAuth(Settings settings) {
        return Boolean.parseBoolean(settings.get(Setting.NO_AUTH));
    }

    private static Duration seconds(Settings settings, Setting setting) {
        return Duration.ofSeconds(settings.whole(setting));
    }
}

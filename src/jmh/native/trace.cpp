// Traces the files of `bench-trace` with Embree 3, a general-purpose ray kernel: robust mode, one ray at a time, one thread.
// Build by hand (Debian: libembree-dev): g++ -O3 -march=native trace.cpp -lembree3 -o trace
// Run: ./trace SCENE RAYS. Distances and corners are rounded to single precision, so a few hits differ from those of bench-trace.
#include <embree3/rtcore.h>

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <vector>

static std::vector<double> read(const char *name) {
    FILE *file = fopen(name, "rb");
    if (!file) {
        perror(name);
        exit(2);
    }
    fseek(file, 0, SEEK_END);
    std::vector<double> content(ftell(file) / 8);
    rewind(file);
    if (fread(content.data(), 8, content.size(), file) != content.size()) exit(2);
    fclose(file);
    return content;
}

static double clock_now() {
    timespec time;
    clock_gettime(CLOCK_THREAD_CPUTIME_ID, &time);
    return time.tv_sec + 1e-9 * time.tv_nsec;
}

static RTCRay ray(const double *way) {
    RTCRay made = {};
    made.org_x = way[0], made.org_y = way[1], made.org_z = way[2];
    made.dir_x = way[3], made.dir_y = way[4], made.dir_z = way[5];
    made.tnear = way[6], made.tfar = way[7];
    made.mask = -1;
    return made;
}

int main(int count, char **names) {
    if (count != 3) {
        fprintf(stderr, "expected SCENE and RAYS\n");
        return 2;
    }
    std::vector<double> corners = read(names[1]);
    std::vector<double> ways = read(names[2]);
    RTCDevice device = rtcNewDevice("threads=1");
    RTCScene scene = rtcNewScene(device);
    rtcSetSceneFlags(scene, RTC_SCENE_FLAG_ROBUST);
    rtcSetSceneBuildQuality(scene, RTC_BUILD_QUALITY_HIGH);
    RTCGeometry geometry = rtcNewGeometry(device, RTC_GEOMETRY_TYPE_TRIANGLE);
    size_t facets = corners.size() / 9;
    float *vertices =
        (float *)rtcSetNewGeometryBuffer(geometry, RTC_BUFFER_TYPE_VERTEX, 0, RTC_FORMAT_FLOAT3, 12, 3 * facets);
    unsigned *index =
        (unsigned *)rtcSetNewGeometryBuffer(geometry, RTC_BUFFER_TYPE_INDEX, 0, RTC_FORMAT_UINT3, 12, facets);
    std::copy(corners.begin(), corners.end(), vertices);
    for (size_t i = 0; i < 3 * facets; i++) index[i] = i;
    rtcCommitGeometry(geometry);
    rtcAttachGeometry(scene, geometry);
    double begun = clock_now();
    rtcCommitScene(scene);
    double building = clock_now() - begun;
    RTCIntersectContext context;
    rtcInitIntersectContext(&context);
    size_t rays = ways.size() / 8, stopped = 0;
    double nearest = 1e9, blocked = 1e9;
    for (int round = 0; round < 5; round++) {
        begun = clock_now();
        for (size_t i = 0; i < rays; i++) {
            RTCRayHit met = {};
            met.ray = ray(&ways[8 * i]);
            met.hit.geomID = RTC_INVALID_GEOMETRY_ID;
            rtcIntersect1(scene, &context, &met);
        }
        nearest = std::min(nearest, clock_now() - begun);
        stopped = 0;
        begun = clock_now();
        for (size_t i = 0; i < rays; i++) {
            RTCRay way = ray(&ways[8 * i]);
            rtcOccluded1(scene, &context, &way);
            stopped += way.tfar < 0;
        }
        blocked = std::min(blocked, clock_now() - begun);
    }
    printf("%zu facets, tree built in %.3f s; %zu rays, %zu of them blocked.\n", facets, building, rays, stopped);
    printf("nearest %.3f million rays/s, blocked %.3f million rays/s\n", 1e-6 * rays / nearest, 1e-6 * rays / blocked);
}

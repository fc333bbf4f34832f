"""Makes the files beside it with NumPy, SciPy and h5py, whose writers are not ours.

Values are exact in every type used, so that tests can ask for them to the last bit.
"""
import h5py
import numpy as np
import scipy.io

N = 12
TIME = np.arange(N) / 1024
CRANK = np.array([0, 0.5, 1, 0.5, 0, -0.5, -1, -0.5, 0, 0.5, 1, 0.5])
COUNTS = (CRANK * 1000).astype("<i2")

np.save("one-axis.npy", CRANK)
np.save("rows-of-channels.npy", np.vstack([CRANK, 2 * CRANK]).astype("<f4"))
np.save("big-endian-columns.npy", np.asfortranarray(np.column_stack([TIME, CRANK])).astype(">f8"))
record = np.zeros(N, dtype=[("time_ms", "<f8"), ("CH1", "<i2"), ("flag", "?")])
record["time_ms"], record["CH1"], record["flag"] = 1000 * TIME, COUNTS, CRANK > 0
np.save("fields.npy", record)
pairs = np.zeros(N, dtype=[("time", "<f8"), ("CH", "<f4", (2,))])
pairs["time"], pairs["CH"] = TIME, np.column_stack([CRANK, CRANK])
np.save("pairs.npy", pairs)
np.save("complex.npy", CRANK + 1j)
np.savez("archive.npz", fs=np.int64(1024), crank=CRANK, coil=2 * CRANK, notes=np.arange(5))
np.savez_compressed("packed.npz", t=TIME, crank=CRANK.astype("<f2"))

matrix = np.column_stack([CRANK, 2 * CRANK])
scipy.io.savemat("level5.mat", {"fs": 1024.0, "data": matrix, "note": "idle"})
scipy.io.savemat(
    "level5-packed.mat",
    {"scope": {"time": TIME[None, :], "CH1": COUNTS[None, :], "other": np.arange(3.0)}},
    do_compression=True,
)
scipy.io.savemat("rising-row.mat", {"data": np.vstack([TIME, CRANK])})
scipy.io.savemat(
    "structures.mat",
    {"scope": {"setup": {"samplingRate_kHz": 1.024, "owner": "bench"}, "ch": {"CRANK": CRANK, "COIL": 2 * CRANK}}},
)

with h5py.File("attributes.h5", "w", libver="v110") as f:
    f.attrs["sample_rate"] = 1024.0
    group = f.create_group("scope")
    data = group.create_dataset("crank", data=COUNTS, chunks=(5,), compression="gzip", shuffle=True)
    data.attrs["units"], data.attrs["scale_factor"], data.attrs["add_offset"] = "mV", 0.5, 250.0
    group.create_dataset("coil", data=2 * CRANK)
    group.create_dataset("comment", data="warm")
with h5py.File("rows.h5", "w", libver="earliest") as f:
    f["table"] = np.zeros((2, 3, 4))
    f["time"] = TIME.astype(">f8")
    f["wave"] = np.vstack([CRANK, 2 * CRANK]).astype("<f4")
with h5py.File("groups.h5", "w", libver="earliest") as f:
    f["fs"] = 1024
    for name, scale in ("CH1", 0.5), ("CH2", 0.25):
        f.create_group(name)["data"] = COUNTS
        f[name].attrs["scale"] = scale
        f[name].attrs["unit"] = "mV"
    f["coil"] = CRANK > 0
with h5py.File("slices.h5", "w") as f:
    f.create_dataset("time_us", data=20 * np.arange(70_000, dtype="<i4"), chunks=(3000,), compression="gzip", shuffle=True)
    wave = (np.arange(140_000) % 1000).astype("<u2").reshape(-1, 2)
    f.create_dataset("v", data=wave, chunks=(4096, 2), compression="gzip", shuffle=True)

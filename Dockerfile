# syntax=docker/dockerfile:1
# By tag here: the release workflow looks up the digests, builds by them and writes the runtime's into the image's labels.
ARG SDK=mcr.microsoft.com/dotnet/sdk:10.0
ARG RUNTIME=mcr.microsoft.com/dotnet/aspnet:10.0

# What is built runs on any processor, so it is built on the builder's own.
FROM --platform=$BUILDPLATFORM ${SDK} AS build
WORKDIR /source
# What the packages are made of changes less often than the code.
COPY global.json Directory.Build.props Directory.Packages.props ./
COPY src/Forming/Forming.csproj src/Forming/packages.lock.json src/Forming/
COPY src/Forming.Drawing/Forming.Drawing.csproj src/Forming.Drawing/packages.lock.json src/Forming.Drawing/
COPY src/FormApi/FormApi.csproj src/FormApi/packages.lock.json src/FormApi/
RUN dotnet restore src/FormApi --locked-mode
COPY . .
RUN dotnet publish src/FormApi -c Release --no-restore -o /app

FROM ${RUNTIME}
ARG VERSION=dev
ARG REVISION=unknown
ARG RUNTIME
LABEL org.opencontainers.image.title="FormApi" \
      org.opencontainers.image.description="Plans faceted forms for shaping sheet metal, over HTTP" \
      org.opencontainers.image.licenses="MIT" \
      org.opencontainers.image.version="${VERSION}" \
      org.opencontainers.image.revision="${REVISION}" \
      org.opencontainers.image.base.name="${RUNTIME}"
WORKDIR /app
COPY --from=build /app .
# Without diagnostics the runtime writes no file, so that the root may be read-only.
ENV ASPNETCORE_URLS=http://0.0.0.0:8080 \
    DOTNET_EnableDiagnostics=0
EXPOSE 8080
USER $APP_UID
HEALTHCHECK --interval=10s --timeout=6s --start-period=20s --retries=3 CMD ["dotnet", "FormApi.dll", "--probe"]
ENTRYPOINT ["dotnet", "FormApi.dll"]
